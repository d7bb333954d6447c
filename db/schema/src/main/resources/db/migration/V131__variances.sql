-- Closing a month empties no account any more: wages, vehicles and rent keep what was spent, and what was absorbed into
-- services stays on its own applied accounts. What was applied and spent when the month closed is kept beside the
-- ledger; the variance is their difference.
create table period_variance (
  first_day    date not null references period (first_day),
  account_code text not null references account (code), -- the account that names the pair
  actual       numeric(19, 3) not null, -- spent
  applied      numeric(19, 3) not null, -- absorbed into services
  primary key (first_day, account_code)
);

-- Closes from before moved the balances of expense accounts to the variance accounts. Posted documents never change,
-- and a document in an open month could only put the amounts into the wrong month, so their entries stay and are left
-- out of every figure. Nothing is ever added here.
create table superseded_close (document_id uuid primary key references document (id));
insert into superseded_close (document_id)
select d.id from document d
where d.kind = 'PERIOD_CLOSE' and exists (select 1 from money_entry e where e.document_id = d.id);
create trigger superseded_close_fixed before insert or update or delete on superseded_close
  for each row execute function refuse_change();
create trigger superseded_close_no_truncate before truncate on superseded_close execute function refuse_change();
grant select on superseded_close to eaveside_app;

-- What the entries of a month say was applied and spent, by the account that names the pair. Entries on that account
-- itself count as spent.
create view ledger_variance as
select date_trunc('month', e.posting_date)::date as first_day, coalesce(a.variance_code, a.code) as account_code,
  coalesce(sum(e.amount) filter (where not a.applied), 0.000) as actual,
  coalesce(-sum(e.amount) filter (where a.applied), 0.000) as applied
from money_entry e
join (select code, variance_code, coalesce(role, '') in ('LABOUR_APPLIED', 'TRAVEL_APPLIED', 'OVERHEAD_APPLIED') as applied
      from account
      where variance_code is not null or code in (select variance_code from account where variance_code is not null)) a
  on a.code = e.account_code
where not exists (select 1 from superseded_close s where s.document_id = e.document_id)
group by 1, 2;

insert into period_variance (first_day, account_code, actual, applied)
select p.first_day, v.code, coalesce(l.actual, 0), coalesce(l.applied, 0)
from period p
cross join (select distinct variance_code as code from account where variance_code is not null) v
left join ledger_variance l on l.first_day = p.first_day and l.account_code = v.code
where p.closed_at is not null;

-- Kept by the transaction that closes the month, before it does, and never again.
create function require_closing_month() returns trigger language plpgsql as $$
begin
  perform 1 from period where first_day = new.first_day and closed_at is null for update;
  if not found then
    raise exception 'the month % is not open', new.first_day using errcode = 'integrity_constraint_violation';
  end if;
  if not exists (select 1 from account where variance_code = new.account_code) then
    raise exception 'no accounts meet at %', new.account_code using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger period_variance_at_close before insert on period_variance
  for each row execute function require_closing_month();
create trigger period_variance_append_only before update or delete on period_variance
  for each row execute function refuse_change();
create trigger period_variance_no_truncate before truncate on period_variance execute function refuse_change();
grant select, insert on period_variance to eaveside_app;

-- A close has no entries: the check of the document's own transaction looks at its kind as well.
create function require_own_posting_transaction() returns trigger language plpgsql as $$
declare
  kind text;
begin
  select d.kind into kind from document d where d.id = new.document_id and d.transaction_id = pg_current_xact_id();
  if not found then
    raise exception 'document % is already posted', new.document_id using errcode = 'integrity_constraint_violation';
  end if;
  if kind = 'PERIOD_CLOSE' then
    raise exception 'the close of a month moves no money' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
drop trigger money_entry_with_document on money_entry;
create trigger money_entry_with_document before insert on money_entry
  for each row execute function require_own_posting_transaction();
