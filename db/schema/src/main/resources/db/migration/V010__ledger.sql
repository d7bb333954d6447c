-- The books: the company whose books they are, accounts, periods, posted documents and the money entries under them.
-- Documents and entries are insert-only three times over: by grant, by trigger, and by having no use case that changes them.

grant usage on schema public to eaveside_app;

create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% is append-only: % refused', tg_table_name, tg_op using errcode = 'integrity_constraint_violation';
end $$;

create table company (
  id           smallint primary key default 1 check (id = 1), -- one database, one company
  name         text not null check (btrim(name) <> ''),
  street       text not null default '',
  city         text not null default '',
  region       text not null default '',
  postal_code  text not null default '',
  country      char(2) not null check (country ~ '^[A-Z]{2}$'),
  email        text not null default '',
  phone        text not null default '',
  tax_number   text not null default '',
  currency     char(3) not null check (currency ~ '^[A-Z]{3}$'),
  zone         text not null,
  measures     text not null check (measures in ('US', 'METRIC')),
  books_from   date not null check (extract(day from books_from) = 1),
  version      integer not null default 0
);
create function keep_currency() returns trigger language plpgsql as $$
begin
  if new.currency <> old.currency or new.books_from <> old.books_from then
    raise exception 'the currency and first month of the books never change' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger company_keeps_currency before update on company for each row execute function keep_currency();

create table account (
  code           text primary key check (code ~ '^[0-9]{4}$'),
  name           text not null unique check (btrim(name) <> ''),
  kind           text not null check (kind in ('ASSET', 'LIABILITY', 'EQUITY', 'REVENUE', 'EXPENSE', 'MEMORANDUM')),
  role           text unique, -- what the program itself posts here; null for the company's own accounts
  needs_line     boolean not null default false,
  needs_customer boolean not null default false,
  needs_visit    boolean not null default false,
  needs_cost     boolean not null default false, -- entries say which kind of cost they are
  variance_code  text references account (code), -- applied and actual accounts that meet here at period close
  check (variance_code is null or kind in ('REVENUE', 'EXPENSE')),
  unique (code, needs_line, needs_customer, needs_visit, needs_cost)
);

-- The chart that a new company starts with; it adds its own accounts beside these.
insert into account (code, name, kind, role, needs_line, needs_customer, needs_visit, needs_cost, variance_code) values
  ('1000', 'Bank', 'ASSET', 'BANK', false, false, false, false, null),
  ('1100', 'Receivables', 'ASSET', 'RECEIVABLES', false, true, false, false, null),
  ('1200', 'Inventory', 'ASSET', 'INVENTORY', false, false, false, false, null),
  ('1300', 'Work in progress', 'ASSET', 'WORK_IN_PROGRESS', true, true, true, true, null),
  ('1500', 'Vehicles and equipment', 'ASSET', null, false, false, false, false, null),
  ('2000', 'Payables', 'LIABILITY', 'PAYABLES', false, false, false, false, null),
  ('2050', 'Goods received, not yet billed', 'LIABILITY', 'GOODS_NOT_BILLED', false, false, false, false, null),
  ('2100', 'Tax payable', 'LIABILITY', 'TAX_PAYABLE', false, false, false, false, null),
  ('2200', 'Customer credit', 'LIABILITY', 'CUSTOMER_CREDIT', false, true, false, false, null),
  ('3000', 'Owner''s equity', 'EQUITY', null, false, false, false, false, null),
  ('4000', 'Service revenue', 'REVENUE', 'REVENUE', true, true, false, false, null),
  ('5000', 'Cost of services', 'EXPENSE', 'COST_OF_SERVICES', true, true, true, true, null),
  ('5100', 'Count differences', 'EXPENSE', 'COUNT_DIFFERENCES', false, false, false, false, null),
  ('5110', 'Scrapped stock', 'EXPENSE', 'SCRAPPED_STOCK', false, false, false, false, null),
  ('6090', 'Labour variance', 'EXPENSE', null, false, false, false, false, null),
  ('6190', 'Travel variance', 'EXPENSE', null, false, false, false, false, null),
  ('6290', 'Overhead variance', 'EXPENSE', null, false, false, false, false, null),
  ('6000', 'Wages and payroll taxes', 'EXPENSE', null, false, false, false, false, '6090'),
  ('6010', 'Labour applied', 'EXPENSE', 'LABOUR_APPLIED', false, false, false, false, '6090'),
  ('6100', 'Vehicle costs', 'EXPENSE', null, false, false, false, false, '6190'),
  ('6110', 'Travel applied', 'EXPENSE', 'TRAVEL_APPLIED', false, false, false, false, '6190'),
  ('6200', 'Rent, insurance and office', 'EXPENSE', null, false, false, false, false, '6290'),
  ('6210', 'Overhead applied', 'EXPENSE', 'OVERHEAD_APPLIED', false, false, false, false, '6290'),
  ('9000', 'Goodwill given', 'MEMORANDUM', 'GOODWILL_GIVEN', true, true, true, false, null),
  ('9010', 'Goodwill given, contra', 'MEMORANDUM', 'GOODWILL_CONTRA', true, true, true, false, null);

create table period (
  first_day date primary key check (extract(day from first_day) = 1),
  closed_at timestamptz,
  closed_by uuid,
  check ((closed_at is null) = (closed_by is null))
);

create table number_series (
  kind        text primary key,
  last_number bigint not null default 0 check (last_number >= 0),
  last_date   date
);
insert into number_series (kind) values
  ('JOURNAL'), ('COST'), ('RECEIPT'), ('TRANSFER'), ('COUNT'), ('SCRAP'), ('VISIT_SHEET'), ('UNBILLED'),
  ('INVOICE'), ('CREDIT_NOTE'), ('PAYMENT'), ('PERIOD_CLOSE'), ('REVERSAL');

create table document (
  id             uuid primary key,
  kind           text not null references number_series (kind),
  number         bigint not null check (number > 0),
  posting_date   date not null,
  service_date   date not null,
  reverses       uuid unique references document (id), -- reversed in full, once
  summary        text not null check (btrim(summary) <> ''),
  posted_by      uuid not null,
  posted_at      timestamptz not null,
  fingerprint    char(64) not null, -- of the command, to tell a retry from a clash
  transaction_id xid8 not null default pg_current_xact_id(),
  unique (kind, number),
  unique (id, posting_date),
  check (posting_date >= service_date or kind in ('REVERSAL', 'CREDIT_NOTE')),
  check (reverses is null or kind in ('REVERSAL', 'CREDIT_NOTE')),
  check (kind not in ('REVERSAL') or reverses is not null)
);
create index document_by_date on document (posting_date desc, id desc);
create trigger document_append_only before update or delete on document for each row execute function refuse_change();
create trigger document_no_truncate before truncate on document execute function refuse_change();

-- Nothing posts into a closed period: the key-share lock makes a close wait for this document, and this document for a close.
create function require_open_period() returns trigger language plpgsql as $$
begin
  perform 1 from period where first_day = date_trunc('month', new.posting_date)::date and closed_at is null for key share;
  if not found then
    raise exception 'the period of % is not open', new.posting_date using errcode = 'integrity_constraint_violation';
  end if;
  if new.number > 1 and not exists (select 1 from document d
      where d.kind = new.kind and d.number = new.number - 1 and d.posting_date <= new.posting_date) then
    raise exception '% number % leaves a gap, or is dated before the last of its series', new.kind, new.number
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger document_in_open_period before insert on document for each row execute function require_open_period();

create table money_entry (
  document_id     uuid not null,
  line            integer not null check (line > 0),
  posting_date    date not null,
  account_code    text not null,
  needs_line      boolean not null,
  needs_customer  boolean not null,
  needs_visit     boolean not null,
  needs_cost      boolean not null,
  amount          numeric(19, 3) not null check (amount <> 0), -- debit above zero, credit below
  service_line_id uuid,
  visit_id        uuid,
  customer_id     uuid,
  cost_kind       text check (cost_kind in ('LABOUR', 'CONSUMABLES', 'TRAVEL', 'OVERHEAD')),
  note            text not null default '',
  primary key (document_id, line),
  foreign key (document_id, posting_date) references document (id, posting_date),
  foreign key (account_code, needs_line, needs_customer, needs_visit, needs_cost)
    references account (code, needs_line, needs_customer, needs_visit, needs_cost),
  check (not needs_line or service_line_id is not null),
  check (not needs_customer or customer_id is not null),
  check (not needs_visit or visit_id is not null),
  check (needs_cost = (cost_kind is not null))
);
create index money_entry_by_account on money_entry (account_code, posting_date, document_id, line);
create index money_entry_by_visit on money_entry (visit_id) where visit_id is not null;
create index money_entry_by_customer on money_entry (customer_id, account_code) where customer_id is not null;
create trigger money_entry_append_only before update or delete on money_entry for each row execute function refuse_change();
create trigger money_entry_no_truncate before truncate on money_entry execute function refuse_change();

-- Entries of either ledger may be added only in the transaction that inserts their document.
create function require_own_transaction() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from document d where d.id = new.document_id and d.transaction_id = pg_current_xact_id()) then
    raise exception 'document % is already posted', new.document_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger money_entry_with_document before insert on money_entry for each row execute function require_own_transaction();

-- Checked once per document at commit; memorandum accounts balance among themselves.
create function require_balance() returns trigger language plpgsql as $$
declare
  off numeric;
begin
  select max(abs(total)) into off from (
    select sum(e.amount) as total from money_entry e join account a on a.code = e.account_code
    where e.document_id = new.id group by a.kind = 'MEMORANDUM') sides;
  if coalesce(off, 0) <> 0 then
    raise exception 'document % is out of balance by %', new.id, off using errcode = 'integrity_constraint_violation';
  end if;
  return null;
end $$;
create constraint trigger document_balances after insert on document deferrable initially deferred
  for each row execute function require_balance();

grant select, insert, update on company, period to eaveside_app;
grant select, insert on account to eaveside_app;
grant update (name) on account to eaveside_app;
grant select, update on number_series to eaveside_app;
grant select, insert on document, money_entry to eaveside_app;
