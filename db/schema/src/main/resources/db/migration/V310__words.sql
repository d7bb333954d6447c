-- A visit that is closed without an invoice is closed, not billed; its document is a visit closing. Posted rows do not change; the word
-- for what they are does, this once. What functions, checks and indexes say of the old codes changes with them.
create temporary table renamed (old text primary key, new text not null) on commit drop;
insert into renamed values ('CLOSED_UNBILLED', 'CLOSED_NOT_BILLED'), ('UNBILLED', 'VISIT_CLOSING'), ('visit_unbilled', 'visit_not_billed');

create function pg_temp.in_words_of_v310(said text) returns text language sql as $$
  select regexp_replace(regexp_replace(regexp_replace(said,
    '\mCLOSED_UNBILLED\M', 'CLOSED_NOT_BILLED', 'g'), '\mUNBILLED\M', 'VISIT_CLOSING', 'g'), '\mvisit_unbilled\M', 'visit_not_billed', 'g')
$$;

do $$
declare
  f record;
begin
  for f in select pg_get_functiondef(p.oid) as said from pg_proc p
           where p.pronamespace = 'public'::regnamespace and p.prokind = 'f' loop
    if pg_temp.in_words_of_v310(f.said) <> f.said then
      execute pg_temp.in_words_of_v310(f.said);
    end if;
  end loop;
end $$;

create temporary table in_codes on commit drop as
  select format('alter table %s drop constraint %I', c.conrelid::regclass, c.conname) as taken_off,
         format('alter table %s add constraint %I %s', c.conrelid::regclass, c.conname, pg_temp.in_words_of_v310(pg_get_constraintdef(c.oid)))
           as put_back
  from pg_constraint c
  where c.connamespace = 'public'::regnamespace and c.contype = 'c'
    -- Checks that do not hold for rows from before them are taken off, too: such a row gets the new word.
    and (not c.convalidated or pg_temp.in_words_of_v310(pg_get_constraintdef(c.oid)) <> pg_get_constraintdef(c.oid))
  union all
  -- A document's type is that of its series of numbers.
  select format('alter table %s drop constraint %I', c.conrelid::regclass, c.conname),
         format('alter table %s add constraint %I %s', c.conrelid::regclass, c.conname, pg_get_constraintdef(c.oid))
  from pg_constraint c
  where c.contype = 'f' and c.confrelid = 'number_series'::regclass;

do $$
declare
  step record;
  coded record;
begin
  for step in select taken_off from in_codes loop
    execute step.taken_off;
  end loop;
  for coded in select * from (values ('number_series', 'type'), ('document', 'type'), ('visit', 'status')) c(relation, attribute) loop
    execute format('alter table %I disable trigger user', coded.relation);
    execute format('update %I t set %I = r.new from renamed r where r.old = t.%I', coded.relation, coded.attribute, coded.attribute);
    execute format('alter table %I enable trigger user', coded.relation);
  end loop;
  for step in select put_back from in_codes loop
    execute step.put_back;
  end loop;
end $$;
alter index visit_unbilled rename to visit_not_billed;
drop function pg_temp.in_words_of_v310(text);

-- What may be there already is a possible duplicate.
alter table customer_import_alike rename to customer_import_duplicate;

do $$
declare
  named record;
begin
  for named in select conname from pg_constraint where conrelid = 'customer_import_duplicate'::regclass and conname like '%import_alike%' loop
    execute format('alter table customer_import_duplicate rename constraint %I to %I', named.conname,
      replace(named.conname, 'import_alike', 'import_duplicate'));
  end loop;
end $$;
