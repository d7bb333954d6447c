-- Consumables: items, places, lots, and the stock ledger. Its entries are insert-only, like those of the money ledger; what a
-- place holds of a lot is kept beside them by a trigger, so that nothing but an entry can move it.

create table stock_item (
  id        uuid primary key,
  code      text not null unique check (btrim(code) <> ''),
  name      text not null check (btrim(name) <> ''),
  kind      text not null check (kind in ('PLAIN', 'CONCENTRATE', 'RESIN', 'BRUSH')),
  base_unit text not null check (base_unit ~ '^[A-Z0-9]{2,3}$'), -- UN/ECE Recommendation 20
  alkaline  boolean not null,
  active    boolean not null,
  version   integer not null,
  check (kind <> 'CONCENTRATE' or base_unit in ('GLL', 'OZA', 'LTR', 'MLT')),
  check (kind <> 'RESIN' or base_unit = 'GRN'),
  check (kind <> 'BRUSH' or base_unit = 'H87'),
  unique (id, kind),
  unique (id, kind, base_unit)
);

create table pack (
  item_id uuid not null references stock_item (id),
  name    text not null check (btrim(name) <> ''),
  content numeric(19, 6) not null check (content > 0), -- in the item's base unit
  primary key (item_id, name)
);

create table mix (
  id               uuid primary key,
  name             text not null unique check (btrim(name) <> ''),
  concentrate_id   uuid not null,
  concentrate_kind text not null default 'CONCENTRATE' check (concentrate_kind = 'CONCENTRATE'),
  parts            numeric(19, 6) not null,
  meaning          text not null check (meaning in ('IN_SOLUTION', 'ADDED_TO_WATER')),
  active           boolean not null,
  version          integer not null,
  foreign key (concentrate_id, concentrate_kind) references stock_item (id, kind),
  check (parts >= 1 or (parts > 0 and meaning = 'ADDED_TO_WATER'))
);

create table place (
  id      uuid primary key,
  name    text not null unique check (btrim(name) <> ''),
  kind    text not null check (kind in ('STORE', 'VAN')),
  active  boolean not null,
  version integer not null,
  unique (id, kind)
);

create table place_technician (
  user_id    uuid primary key references app_user (id), -- at most one van each
  place_id   uuid not null,
  place_kind text not null default 'VAN' check (place_kind = 'VAN'),
  foreign key (place_id, place_kind) references place (id, kind)
);
create index place_technician_by_place on place_technician (place_id);

create table stock_minimum (
  item_id  uuid not null references stock_item (id),
  place_id uuid not null references place (id),
  quantity numeric(19, 6) not null check (quantity > 0),
  primary key (item_id, place_id)
);

-- A delivery as it came in. The item's kind and unit are part of the key, so that neither can change under its quantities.
create table lot (
  id          uuid primary key,
  item_id     uuid not null,
  item_kind   text not null,
  unit        text not null,
  document_id uuid not null references document (id),
  label       text not null,
  received_on date not null,
  quantity    numeric(19, 6) not null check (quantity > 0),
  value       numeric(19, 3) not null check (value >= 0),
  withdrawn   boolean not null default false, -- its document was reversed
  foreign key (item_id, item_kind, unit) references stock_item (id, kind, base_unit),
  unique (id, item_id),
  check (item_kind not in ('RESIN', 'BRUSH') or btrim(label) <> '')
);
create unique index lot_label on lot (item_id, label) where item_kind in ('RESIN', 'BRUSH') and not withdrawn;
create index lot_newest on lot (item_id, received_on desc, id desc);
create index lot_by_document on lot (document_id);

-- What a place holds of a lot: never below zero, and worth nothing once it is gone.
create table lot_stock (
  lot_id   uuid not null,
  place_id uuid not null references place (id),
  item_id  uuid not null,
  quantity numeric(19, 6) not null check (quantity >= 0),
  value    numeric(19, 3) not null check (value >= 0),
  primary key (lot_id, place_id),
  foreign key (lot_id, item_id) references lot (id, item_id),
  check (quantity > 0 or value = 0)
);
create index lot_stock_there on lot_stock (place_id, item_id) where quantity > 0;

create table stock_entry (
  document_id  uuid not null,
  line         integer not null check (line > 0),
  posting_date date not null,
  item_id      uuid not null,
  lot_id       uuid not null,
  place_id     uuid not null references place (id),
  quantity     numeric(19, 6) not null check (quantity <> 0), -- in above zero, out below
  value        numeric(19, 3) not null,
  primary key (document_id, line),
  foreign key (document_id, posting_date) references document (id, posting_date),
  foreign key (lot_id, item_id) references lot (id, item_id),
  check (value = 0 or sign(value) = sign(quantity))
);
create index stock_entry_by_date on stock_entry (posting_date, document_id, line);
create index stock_entry_by_item on stock_entry (item_id, posting_date, document_id, line);
create index stock_entry_by_place on stock_entry (place_id, posting_date, document_id, line);
create index stock_entry_by_lot on stock_entry (lot_id, posting_date, document_id, line);
create trigger stock_entry_append_only before update or delete on stock_entry for each row execute function refuse_change();
create trigger stock_entry_no_truncate before truncate on stock_entry execute function refuse_change();
create trigger stock_entry_with_document before insert on stock_entry for each row execute function require_own_transaction();

create function keep_lot_stock() returns trigger language plpgsql as $$
begin
  update lot_stock set quantity = quantity + new.quantity, value = value + new.value
    where lot_id = new.lot_id and place_id = new.place_id;
  if not found then
    insert into lot_stock (lot_id, place_id, item_id, quantity, value)
      values (new.lot_id, new.place_id, new.item_id, new.quantity, new.value);
  end if;
  return null;
end $$;
create trigger stock_entry_moves_lot after insert on stock_entry for each row execute function keep_lot_stock();

-- The stock ledger as people read it.
create view stock_movement as
  select e.document_id, e.line, d.kind as document_kind, d.number, e.posting_date, d.service_date, d.summary,
         e.item_id, i.name as item_name, i.base_unit, e.lot_id, l.label as lot_label, e.place_id, p.name as place_name,
         e.quantity, e.value
  from stock_entry e
  join document d on d.id = e.document_id
  join stock_item i on i.id = e.item_id
  join lot l on l.id = e.lot_id
  join place p on p.id = e.place_id;

grant select, insert, update on stock_item, mix, place to eaveside_app;
grant select, insert, update, delete on pack, place_technician, stock_minimum to eaveside_app;
grant select, insert on lot, stock_entry to eaveside_app;
grant update (withdrawn) on lot to eaveside_app;
grant select, insert, update (quantity, value) on lot_stock to eaveside_app;
grant select on stock_movement to eaveside_app;
