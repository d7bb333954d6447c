-- Visits: the plan, the signed-off sheet, and what was decided about the difference between the two.
-- A sheet is a posted document and never changes; a visit points at the one sheet that it stands on.

create table visit (
  id            uuid primary key,
  customer_id   uuid not null references customer (id),
  site_id       uuid not null references site (id),
  quote_id      uuid references quote (id),
  price_book_id uuid references price_book (id), -- pinned by the quote; without one, the book in force on the day
  returns_to    uuid references visit (id), -- the visit whose skipped work it does
  planned_for   date not null,
  status        text not null check (status in ('PLANNED', 'CANCELLED', 'DONE', 'BILLED', 'CLOSED_UNBILLED')),
  note          text not null default '',
  booked_by     uuid not null references app_user (id),
  booked_at     timestamptz not null,
  fingerprint   char(64) not null, -- of the booking, to tell a retry from a clash
  sheet_id      uuid unique, -- the sheet that it stands on
  done_on       date,
  closing_id    uuid unique references document (id), -- closed without an invoice by this document
  invoice_id    uuid, -- plain: invoices lie to the right
  version       integer not null default 0,
  check ((quote_id is null) = (price_book_id is null)),
  check ((sheet_id is null) = (status in ('PLANNED', 'CANCELLED'))),
  check ((sheet_id is null) = (done_on is null)),
  check ((closing_id is not null) = (status = 'CLOSED_UNBILLED')),
  check ((invoice_id is not null) = (status = 'BILLED'))
);
-- A quote is worked off by one visit, and by returns for what that one skipped.
create unique index visit_of_quote on visit (quote_id) where quote_id is not null and returns_to is null and status <> 'CANCELLED';
create index visit_planned on visit (planned_for, id) where status = 'PLANNED';
create index visit_unbilled on visit (done_on, id) where status = 'DONE';
create index visit_by_customer on visit (customer_id, planned_for desc, id desc);
create index visit_by_site on visit (site_id);
create index visit_by_invoice on visit (invoice_id) where invoice_id is not null;
create index visit_by_returns_to on visit (returns_to) where returns_to is not null;

create table visit_crew (
  visit_id uuid not null references visit (id),
  user_id  uuid not null references app_user (id),
  primary key (visit_id, user_id)
);
create index visit_crew_by_user on visit_crew (user_id, visit_id);

-- Each time that a visit was moved, given another crew, or cancelled.
create table visit_change (
  visit_id   uuid not null references visit (id),
  position   integer not null check (position >= 0),
  kind       text not null check (kind in ('MOVED', 'CANCELLED')),
  from_date  date not null,
  to_date    date not null,
  reason     text not null check (btrim(reason) <> ''),
  changed_by uuid not null references app_user (id),
  changed_at timestamptz not null,
  primary key (visit_id, position)
);
create trigger visit_change_append_only before update or delete on visit_change for each row execute function refuse_change();

create table visit_sheet (
  document_id     uuid primary key references document (id),
  visit_id        uuid not null references visit (id),
  signed_by       uuid not null references app_user (id),
  done_on         date not null,
  place_id        uuid references place (id), -- where the consumables came from
  on_site_minutes integer not null check (on_site_minutes >= 0),
  driving_minutes integer not null check (driving_minutes >= 0),
  loading_minutes integer not null check (loading_minutes >= 0),
  distance        numeric(18, 6) not null check (distance >= 0),
  distance_unit   text not null,
  note            text not null default '',
  unique (document_id, visit_id)
);
create index visit_sheet_by_visit on visit_sheet (visit_id);
alter table visit add foreign key (sheet_id, id) references visit_sheet (document_id, visit_id);

create table visit_line (
  id              uuid primary key,
  visit_id        uuid not null references visit (id),
  position        integer not null check (position > 0),
  sheet_id        uuid references visit_sheet (document_id), -- null where planned; else the sheet that reports it as an extra
  offering_id     uuid not null references offering (id),
  service_line_id uuid not null references service_line (id),
  surface_id      uuid references surface (id),
  quote_line_id   uuid references quote_line (id),
  comes_back_for  uuid,
  quantity        numeric(18, 6) not null check (quantity > 0),
  unit            text not null,
  agreed_by       text not null default '', -- who agreed to an extra on site
  unique (id, visit_id),
  check ((sheet_id is null) = (agreed_by = '')),
  check (sheet_id is null or (quote_line_id is null and comes_back_for is null))
);
create unique index visit_line_in_order on visit_line (visit_id, position) where sheet_id is null;
create index visit_line_by_sheet on visit_line (sheet_id) where sheet_id is not null;

-- Units done of every planned line; skips and extras stand beside it.
create table visit_sheet_line (
  sheet_id      uuid not null,
  position      integer not null check (position >= 0),
  visit_id      uuid not null,
  visit_line_id uuid not null,
  done          numeric(18, 6) not null check (done >= 0),
  unit          text not null,
  primary key (sheet_id, position),
  unique (sheet_id, visit_line_id),
  foreign key (sheet_id, visit_id) references visit_sheet (document_id, visit_id),
  foreign key (visit_line_id, visit_id) references visit_line (id, visit_id)
);
create table visit_sheet_skip (
  sheet_id      uuid not null references visit_sheet (document_id),
  position      integer not null check (position >= 0),
  visit_line_id uuid not null references visit_line (id),
  quantity      numeric(18, 6) not null check (quantity > 0),
  unit          text not null,
  reason        text not null check (reason in ('CRACKED', 'WEATHER', 'NO_ACCESS', 'CUSTOMER_WISH', 'OTHER')),
  note          text not null default '',
  finding_id    uuid references finding (id),
  primary key (sheet_id, position)
);
create table visit_sheet_reading (
  sheet_id        uuid not null references visit_sheet (document_id),
  position        integer not null check (position >= 0),
  feed_ppm        numeric(12, 4) not null,
  product_ppm     numeric(12, 4) not null check (product_ppm >= 0),
  volume          numeric(18, 6) not null check (volume > 0),
  unit            text not null,
  lot_id          uuid references lot (id),
  service_line_id uuid references service_line (id),
  primary key (sheet_id, position),
  check (feed_ppm >= product_ppm)
);
create table visit_sheet_use (
  sheet_id        uuid not null references visit_sheet (document_id),
  position        integer not null check (position >= 0),
  mix_id          uuid references mix (id),
  lot_id          uuid references lot (id),
  stock_item_id   uuid references stock_item (id),
  quantity        numeric(18, 6) not null check (quantity > 0),
  unit            text not null,
  service_line_id uuid references service_line (id),
  primary key (sheet_id, position),
  check (num_nonnulls(mix_id, lot_id, stock_item_id) = 1)
);
-- A count difference declared on a sheet, posted by a count document of its own in the sheet's transaction.
create table visit_sheet_count (
  sheet_id      uuid not null references visit_sheet (document_id),
  position      integer not null check (position >= 0),
  document_id   uuid not null references document (id),
  reason        text not null check (btrim(reason) <> ''),
  stock_item_id uuid not null references stock_item (id),
  lot_id        uuid references lot (id),
  basis         text not null check (basis in ('FOUND', 'DIFFERENCE')),
  quantity      numeric(18, 6) not null check (quantity >= 0 or basis = 'DIFFERENCE'),
  unit          text not null,
  primary key (sheet_id, position)
);
-- What the sheet put into work in progress: the side of the visits that the proof holds against the ledger.
create table visit_sheet_cost (
  sheet_id        uuid not null references visit_sheet (document_id),
  position        integer not null check (position >= 0),
  service_line_id uuid not null references service_line (id),
  cost_kind       text not null check (cost_kind in ('LABOUR', 'CONSUMABLES', 'TRAVEL', 'OVERHEAD')),
  amount          numeric(19, 3) not null check (amount > 0),
  primary key (sheet_id, position),
  unique (sheet_id, service_line_id, cost_kind)
);
create table visit_sheet_warning (
  sheet_id      uuid not null references visit_sheet (document_id),
  position      integer not null check (position >= 0),
  stock_item_id uuid not null references stock_item (id),
  surface_id    uuid not null references surface (id),
  module_maker  text not null,
  primary key (sheet_id, position)
);

create table scope_difference (
  id            uuid primary key,
  sheet_id      uuid not null,
  visit_id      uuid not null,
  position      integer not null check (position >= 0),
  visit_line_id uuid not null,
  kind          text not null check (kind in ('SKIPPED', 'EXTRA')),
  quantity      numeric(18, 6) not null check (quantity > 0),
  unit          text not null,
  reason        text check (reason in ('CRACKED', 'WEATHER', 'NO_ACCESS', 'CUSTOMER_WISH', 'OTHER')),
  decision      text not null check (decision in ('OPEN', 'BILL', 'GIVE', 'ASK', 'COME_BACK', 'LEAVE')),
  decided_by    uuid references app_user (id),
  decided_at    timestamptz,
  note          text not null default '',
  version       integer not null default 0,
  unique (sheet_id, position),
  foreign key (sheet_id, visit_id) references visit_sheet (document_id, visit_id),
  foreign key (visit_line_id, visit_id) references visit_line (id, visit_id),
  check ((reason is not null) = (kind = 'SKIPPED')),
  check (kind = 'SKIPPED' or decision in ('OPEN', 'BILL', 'GIVE', 'ASK')),
  check (kind = 'EXTRA' or decision in ('OPEN', 'ASK', 'COME_BACK', 'LEAVE')),
  check ((decision = 'OPEN') = (decided_by is null) and (decided_by is null) = (decided_at is null))
);
create index scope_difference_waiting on scope_difference (sheet_id) where decision in ('OPEN', 'ASK', 'COME_BACK');
create index scope_difference_by_visit on scope_difference (visit_id);
alter table visit_line add foreign key (comes_back_for) references scope_difference (id);
create index visit_line_by_comes_back_for on visit_line (comes_back_for) where comes_back_for is not null;

-- A sheet and everything on it is posted: it is added in the transaction that posts its document, and never changes.
create function require_sheet_unposted() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from document d where d.id = new.sheet_id and d.transaction_id = pg_current_xact_id()) then
    raise exception 'visit sheet % is already posted', new.sheet_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create function require_sheet_document() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from document d
      where d.id = new.document_id and d.kind = 'VISIT_SHEET' and d.transaction_id = pg_current_xact_id()) then
    raise exception 'document % is no visit sheet of this transaction', new.document_id
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger visit_sheet_with_document before insert on visit_sheet for each row execute function require_sheet_document();
create trigger visit_sheet_append_only before update or delete on visit_sheet for each row execute function refuse_change();
do $$
declare
  t text;
begin
  foreach t in array array['visit_sheet_line', 'visit_sheet_skip', 'visit_sheet_reading', 'visit_sheet_use', 'visit_sheet_count',
      'visit_sheet_cost', 'visit_sheet_warning'] loop
    execute format('create trigger %1$s_with_document before insert on %1$s for each row execute function require_sheet_unposted()', t);
    execute format('create trigger %1$s_append_only before update or delete on %1$s for each row execute function refuse_change()', t);
    execute format('grant select, insert on %s to eaveside_app', t);
  end loop;
end $$;

grant select, insert, update on visit to eaveside_app;
grant select, insert, delete on visit_crew to eaveside_app;
grant select, insert on visit_change, visit_line, visit_sheet to eaveside_app;
grant select, insert on scope_difference to eaveside_app;
grant update (decision, decided_by, decided_at, note, version) on scope_difference to eaveside_app;
