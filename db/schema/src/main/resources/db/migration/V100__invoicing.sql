-- Invoices: drafts that may change and go away, issued invoices that never change but for their open balance and the
-- credit note against them, payments, and what settles which invoice. A draft, its invoice and the invoice's document
-- share one id.

create table invoice_draft (
  id           uuid primary key,
  version      integer not null default 0,
  customer_id  uuid not null references customer (id),
  visit_id     uuid unique references visit (id), -- one draft at a time bills a visit
  visit_version integer, -- of the visit when the draft was made of it
  service_date date not null,
  reference    text not null default '',
  note         text not null default '',
  prepaid      numeric(19, 3) not null check (prepaid >= 0), -- taken from the customer's credit when issued
  gross        numeric(19, 3) not null, -- as reckoned when it was last written, for lists
  made_by      uuid not null,
  made_at      timestamptz not null,
  fingerprint  char(64) not null, -- of the command that made it, to tell a retry from a clash
  check ((visit_id is null) = (visit_version is null))
);
create index invoice_draft_by_customer on invoice_draft (customer_id);

create table invoice_draft_line (
  invoice_id      uuid not null references invoice_draft (id),
  position        integer not null check (position > 0),
  id              uuid not null,
  service_line_id uuid not null references service_line (id),
  description     text not null check (btrim(description) <> ''),
  quantity        numeric(19, 6) not null,
  unit            text not null,
  gross_price     numeric(22, 10) not null check (gross_price >= 0),
  discount        numeric(22, 10) not null check (discount between 0 and gross_price),
  base_quantity   numeric(19, 6) not null check (base_quantity > 0),
  base_unit       text not null,
  tax_code        text not null,
  visit_line_id   uuid,
  finding_id      uuid references finding (id),
  goodwill        boolean not null default false,
  price_reason    text not null default '', -- how the price came about, in one sentence
  primary key (invoice_id, position),
  unique (invoice_id, id),
  check (visit_line_id is not null or (finding_id is null and not goodwill))
);

create table invoice_draft_adjustment (
  invoice_id    uuid not null references invoice_draft (id),
  position      integer not null check (position > 0),
  line_position integer, -- of its line; null for one of the whole invoice
  kind          text not null check (kind in ('ALLOWANCE', 'CHARGE')),
  amount        numeric(19, 3) not null check (amount >= 0),
  reason        text not null check (btrim(reason) <> ''),
  tax_code      text,
  primary key (invoice_id, position),
  foreign key (invoice_id, line_position) references invoice_draft_line (invoice_id, position)
    deferrable initially deferred,
  check ((line_position is null) = (tax_code is not null))
);

create table invoice (
  id             uuid primary key references document (id),
  number         bigint not null unique,
  invoice_date   date not null,
  due_date       date not null,
  service_date   date not null,
  customer_id    uuid not null references customer (id),
  customer_name  text not null check (btrim(customer_name) <> ''), -- as it was when issued, like the address
  street         text not null,
  city           text not null,
  region         text not null,
  postal_code    text not null,
  country        char(2) not null,
  visit_id       uuid references visit (id),
  reference      text not null,
  note           text not null,
  line_sum       numeric(19, 3) not null,
  allowances     numeric(19, 3) not null check (allowances >= 0),
  charges        numeric(19, 3) not null check (charges >= 0),
  net            numeric(19, 3) not null,
  tax            numeric(19, 3) not null,
  gross          numeric(19, 3) not null check (gross >= 0),
  prepaid        numeric(19, 3) not null check (prepaid between 0 and gross),
  open           numeric(19, 3) not null check (open between 0 and gross), -- working column: what is still to be paid
  credit_note_id uuid unique references document (id),
  foreign key (id, invoice_date) references document (id, posting_date),
  check (net = line_sum - allowances + charges),
  check (gross = net + tax),
  check (due_date >= invoice_date),
  check (credit_note_id is null or open = 0)
);
create index invoice_by_customer on invoice (customer_id, number desc);
create index invoice_outstanding on invoice (due_date, id) where open > 0;
create index invoice_outstanding_by_customer on invoice (customer_id, due_date, id) where open > 0;
create index invoice_by_visit on invoice (visit_id) where visit_id is not null;
create unique index invoice_once_per_visit on invoice (visit_id) where visit_id is not null and credit_note_id is null;

create table invoice_line (
  invoice_id      uuid not null references invoice (id),
  position        integer not null check (position > 0),
  id              uuid not null,
  service_line_id uuid not null references service_line (id),
  description     text not null check (btrim(description) <> ''),
  quantity        numeric(19, 6) not null,
  unit            text not null,
  gross_price     numeric(22, 10) not null check (gross_price >= 0),
  discount        numeric(22, 10) not null check (discount between 0 and gross_price),
  base_quantity   numeric(19, 6) not null check (base_quantity > 0),
  base_unit       text not null,
  tax_code        text not null,
  visit_line_id   uuid,
  finding_id      uuid references finding (id),
  goodwill        boolean not null,
  price_reason    text not null,
  tax_category    text not null check (tax_category in ('S', 'Z', 'E', 'O', 'AE', 'G', 'K')),
  tax_rate        numeric(7, 4) not null check ((tax_category = 'S') = (tax_rate > 0)),
  net             numeric(19, 3) not null,
  primary key (invoice_id, position),
  unique (invoice_id, id),
  check (visit_line_id is not null or (finding_id is null and not goodwill)),
  check (not goodwill or net = 0)
);

create table invoice_adjustment (
  invoice_id    uuid not null references invoice (id),
  position      integer not null check (position > 0),
  line_position integer,
  kind          text not null check (kind in ('ALLOWANCE', 'CHARGE')),
  amount        numeric(19, 3) not null check (amount >= 0),
  reason        text not null check (btrim(reason) <> ''),
  tax_code      text,
  tax_category  text,
  tax_rate      numeric(7, 4),
  primary key (invoice_id, position),
  foreign key (invoice_id, line_position) references invoice_line (invoice_id, position) deferrable initially deferred,
  check ((line_position is null) = (tax_code is not null)),
  check ((tax_code is null) = (tax_category is null) and (tax_code is null) = (tax_rate is null)),
  check ((tax_category = 'S') = (tax_rate > 0))
);

create table invoice_tax (
  invoice_id       uuid not null references invoice (id),
  position         integer not null check (position > 0),
  tax_category     text not null,
  tax_rate         numeric(7, 4) not null,
  taxable          numeric(19, 3) not null,
  tax              numeric(19, 3) not null,
  exemption_reason text not null default '',
  primary key (invoice_id, position),
  unique (invoice_id, tax_category, tax_rate),
  check ((tax_category = 'S') = (tax_rate > 0)),
  check (tax_category = 'S' or tax = 0)
);

-- A customer's unmatched money, and the lock that everything that moves it takes.
create table customer_account (
  customer_id uuid primary key references customer (id),
  credit      numeric(19, 3) not null default 0 check (credit >= 0)
);

create table payment (
  id          uuid primary key references document (id),
  number      bigint not null unique,
  customer_id uuid not null references customer (id),
  amount      numeric(19, 3) not null check (amount <> 0), -- received above zero, paid back below
  method      text not null check (method in ('CASH', 'CHECK', 'CARD', 'BANK_TRANSFER', 'OTHER')),
  reference   text not null default ''
);
create index payment_by_customer on payment (customer_id, number desc);

-- What a document settles of an invoice: above zero where it pays or matches, below where it takes that back.
create table settlement (
  document_id uuid not null references document (id),
  invoice_id  uuid not null references invoice (id),
  amount      numeric(19, 3) not null check (amount <> 0),
  primary key (document_id, invoice_id)
);
create index settlement_by_invoice on settlement (invoice_id);

create function keep_issued() returns trigger language plpgsql as $$
begin
  if (to_jsonb(new) - 'open' - 'credit_note_id') <> (to_jsonb(old) - 'open' - 'credit_note_id')
      or (old.credit_note_id is not null and new.credit_note_id is distinct from old.credit_note_id) then
    raise exception 'an issued invoice never changes: invoice %', old.number using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger invoice_keeps before update on invoice for each row execute function keep_issued();
create trigger invoice_stays before delete on invoice for each row execute function refuse_change();
create trigger invoice_line_append_only before update or delete on invoice_line for each row execute function refuse_change();
create trigger invoice_adjustment_append_only before update or delete on invoice_adjustment for each row execute function refuse_change();
create trigger invoice_tax_append_only before update or delete on invoice_tax for each row execute function refuse_change();
create trigger payment_append_only before update or delete on payment for each row execute function refuse_change();
create trigger settlement_append_only before update or delete on settlement for each row execute function refuse_change();

-- Parts of an invoice come with its document, in the same transaction, or not at all.
create function require_invoice_transaction() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from document d where d.id = new.invoice_id and d.transaction_id = pg_current_xact_id()) then
    raise exception 'invoice % is already issued', new.invoice_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger invoice_line_with_invoice before insert on invoice_line for each row execute function require_invoice_transaction();
create trigger invoice_adjustment_with_invoice before insert on invoice_adjustment for each row execute function require_invoice_transaction();
create trigger invoice_tax_with_invoice before insert on invoice_tax for each row execute function require_invoice_transaction();
create trigger settlement_with_document before insert on settlement for each row execute function require_own_transaction();

grant select, insert, update, delete on invoice_draft, invoice_draft_line, invoice_draft_adjustment to eaveside_app;
grant select, insert on invoice, invoice_line, invoice_adjustment, invoice_tax, payment, settlement to eaveside_app;
grant update (open, credit_note_id) on invoice to eaveside_app;
grant select, insert, update on customer_account to eaveside_app;
