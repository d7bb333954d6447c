-- What the company sells, as data, and the owner's dated tax settings.

create table service_line (
  id         uuid primary key,
  code       text not null check (code ~ '^[A-Z0-9]([A-Z0-9-]{0,18}[A-Z0-9])?$'),
  name       text not null check (btrim(name) <> '' and length(name) <= 100),
  active     boolean not null,
  version    integer not null check (version >= 1),
  changed_by uuid not null,
  changed_at timestamptz not null,
  constraint service_line_code unique (code)
);

create table tax_code (
  code text primary key check (code ~ '^[A-Z0-9]([A-Z0-9-]{0,18}[A-Z0-9])?$')
);

-- A setting is never changed: one that is not yet in force is set again by a further entry for the same day.
create table tax_setting (
  code             text not null references tax_code (code),
  valid_from       date not null,
  entry            integer not null check (entry >= 1),
  category         text not null check (category in ('S', 'Z', 'E', 'O', 'AE', 'G', 'K')),
  rate             numeric(7, 4) not null check (rate between 0 and 100),
  exemption_reason text not null check (length(exemption_reason) <= 200),
  set_by           uuid not null,
  set_at           timestamptz not null,
  primary key (code, valid_from, entry),
  check ((category = 'S') = (rate > 0)),
  check ((category in ('S', 'Z')) = (exemption_reason = ''))
);
create trigger tax_setting_append_only before update or delete on tax_setting for each row execute function refuse_change();
create trigger tax_setting_no_truncate before truncate on tax_setting execute function refuse_change();

create table offering (
  id               uuid primary key,
  service_line_id  uuid not null references service_line (id),
  code             text not null check (code ~ '^[A-Z0-9]([A-Z0-9-]{0,18}[A-Z0-9])?$'),
  name             text not null check (btrim(name) <> '' and length(name) <= 200),
  unit             text not null check (unit in ('H87', 'C62', 'MTK', 'FTK', 'MTR', 'FOT', 'GLL', 'OZA', 'LTR', 'MLT', 'LBR',
                                                 'KGM', 'GRM', 'GRN', 'HUR', 'MIN', 'SMI', 'KMT')),
  minutes_per_unit numeric(12, 4) not null check (minutes_per_unit >= 0),
  tax_code         text not null references tax_code (code),
  surface_kind     text check (surface_kind in ('ARRAY', 'SKYLIGHT', 'WINDOW', 'ROOF')),
  cautions         text not null check (length(cautions) <= 2000),
  active           boolean not null,
  version          integer not null check (version >= 1),
  changed_by       uuid not null,
  changed_at       timestamptz not null,
  constraint offering_code unique (code),
  constraint offering_unit_fits check (surface_kind is null
    or (surface_kind in ('ARRAY', 'SKYLIGHT', 'WINDOW') and unit in ('H87', 'C62'))
    or (surface_kind = 'ROOF' and unit in ('MTK', 'FTK')))
);
create index offering_by_line on offering (service_line_id);

-- The stock item lives in the inventory, which leans on this table: a plain id here.
create table offering_consumable (
  offering_id   uuid not null references offering (id),
  position      integer not null check (position >= 0),
  stock_item_id uuid not null,
  quantity      numeric(19, 6) not null check (quantity > 0),
  unit          text not null check (unit in ('H87', 'C62', 'MTK', 'FTK', 'MTR', 'FOT', 'GLL', 'OZA', 'LTR', 'MLT', 'LBR',
                                              'KGM', 'GRM', 'GRN', 'HUR', 'MIN', 'SMI', 'KMT')),
  primary key (offering_id, position),
  unique (offering_id, stock_item_id) deferrable initially deferred
);
create index offering_consumable_by_item on offering_consumable (stock_item_id);

grant select, insert on service_line, offering, tax_code, tax_setting to eaveside_app;
grant update (code, name, active, version, changed_by, changed_at) on service_line to eaveside_app;
-- The unit and the service line stay: prices, plans and entries count on them.
grant update (code, name, minutes_per_unit, tax_code, surface_kind, cautions, active, version, changed_by, changed_at)
  on offering to eaveside_app;
grant select, insert, update, delete on offering_consumable to eaveside_app;
