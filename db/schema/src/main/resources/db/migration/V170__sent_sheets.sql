-- What somebody sent as the sheet of a visit and what did not become it: refused, or sent after another of the crew had signed
-- off. It is kept as it was sent, and never changes; the office reads it and says so.

create table sent_sheet (
  id             uuid primary key,
  visit_id       uuid not null references visit (id),
  sheet_id       uuid, -- the id that the phone had made for it; null where that was none, or another sheet's already
  sent_by        uuid not null references app_user (id),
  sent_at        timestamptz not null,
  refusal        text not null check (btrim(refusal) <> ''), -- why it did not become the visit's sheet
  urgent         boolean not null, -- whether it tells of something urgent
  fingerprint    char(64) not null, -- of visit, sender and fields: the same again is one row
  transaction_id xid8 not null default pg_current_xact_id(),
  unique (visit_id, sent_by, fingerprint)
);
create index sent_sheet_by_sheet on sent_sheet (sheet_id) where sheet_id is not null;

create table sent_sheet_field (
  sent_sheet_id uuid not null references sent_sheet (id),
  position      integer not null check (position >= 0),
  name          text not null,
  value         text not null,
  primary key (sent_sheet_id, position)
);

create table sent_sheet_read (
  sent_sheet_id uuid primary key references sent_sheet (id),
  note          text not null default '',
  read_by       uuid not null references app_user (id),
  read_at       timestamptz not null
);

-- Its fields come with it, at least one, and none later.
create function require_sent_now() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from sent_sheet s where s.id = new.sent_sheet_id and s.transaction_id = pg_current_xact_id()) then
    raise exception 'sent sheet % is already kept', new.sent_sheet_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create function require_sent_fields() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from sent_sheet_field f where f.sent_sheet_id = new.id) then
    raise exception 'sent sheet % says nothing', new.id using errcode = 'integrity_constraint_violation';
  end if;
  return null;
end $$;
create trigger sent_sheet_field_with_sheet before insert on sent_sheet_field for each row execute function require_sent_now();
create constraint trigger sent_sheet_says_something after insert on sent_sheet deferrable initially deferred
  for each row execute function require_sent_fields();

do $$
declare
  t text;
begin
  foreach t in array array['sent_sheet', 'sent_sheet_field', 'sent_sheet_read'] loop
    execute format('create trigger %1$s_append_only before update or delete on %1$s for each row execute function refuse_change()', t);
    execute format('create trigger %1$s_no_truncate before truncate on %1$s execute function refuse_change()', t);
    execute format('grant select, insert on %s to eaveside_app', t);
  end loop;
end $$;
