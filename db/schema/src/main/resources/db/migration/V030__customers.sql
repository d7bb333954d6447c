-- Whom the company works for, where, and on which surfaces.

-- Both are trusted extensions: the owner of the database may create them.
create extension if not exists pg_trgm with schema public;
create extension if not exists unaccent with schema public;

-- A text as its words in lower case without accents, each with a blank before it, so that like '% smi%' asks for a word
-- that begins with smi, and a trigram index answers. Lower case and letters follow Unicode whatever the server's locale.
create function search_words(given text) returns text language sql immutable strict parallel safe as $$
  select rtrim(' ' || ltrim(regexp_replace(
    lower(public.unaccent('public.unaccent'::regdictionary, given) collate "und-x-icu"), '[^[:alnum:]]+', ' ', 'g')))
$$;

create table customer (
  id                uuid primary key,
  name              text not null check (btrim(name) <> '' and length(name) <= 200),
  kind              text not null check (kind in ('HOUSEHOLD', 'BUSINESS')),
  street            text not null check (length(street) <= 200),
  city              text not null check (length(city) <= 100),
  region            text not null check (length(region) <= 100),
  postal_code       text not null check (length(postal_code) <= 20),
  country           char(2) not null check (country ~ '^[A-Z]{2}$'),
  email             text not null check (email = '' or email ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
  phone             text not null check (length(phone) <= 50),
  payment_term_days smallint not null check (payment_term_days between 0 and 365),
  note              text not null check (length(note) <= 2000),
  active            boolean not null,
  version           integer not null check (version >= 1),
  changed_by        uuid not null,
  changed_at        timestamptz not null,
  sort_name         text collate "C" not null generated always as (search_words(name)) stored,
  words             text not null default '' -- of the customer with its contacts and sites; kept by the trigger below
);
create index customer_by_name on customer (sort_name, id);
-- Without a list of pending entries (fastupdate) a search costs the same whatever was just imported.
create index customer_by_words on customer using gin (words gin_trgm_ops) with (fastupdate = off);

create table contact (
  id          uuid primary key,
  customer_id uuid not null references customer (id),
  name        text not null check (btrim(name) <> '' and length(name) <= 200),
  role        text not null check (length(role) <= 100),
  email       text not null check (email = '' or email ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
  phone       text not null check (length(phone) <= 50),
  active      boolean not null,
  version     integer not null check (version >= 1),
  changed_by  uuid not null,
  changed_at  timestamptz not null
);
create index contact_by_customer on contact (customer_id);

create table site (
  id            uuid primary key,
  customer_id   uuid not null references customer (id),
  name          text not null check (btrim(name) <> '' and length(name) <= 200),
  street        text not null check (length(street) <= 200),
  city          text not null check (length(city) <= 100),
  region        text not null check (length(region) <= 100),
  postal_code   text not null check (length(postal_code) <= 20),
  country       char(2) not null check (country ~ '^[A-Z]{2}$'),
  access_notes  text not null check (length(access_notes) <= 2000),
  hazards       text not null check (length(hazards) <= 2000),
  water_on_site boolean not null,
  active        boolean not null,
  version       integer not null check (version >= 1),
  changed_by    uuid not null,
  changed_at    timestamptz not null,
  unique (id, customer_id) -- so that a document can name both and be sure that they belong together
);
create index site_by_customer on site (customer_id);

-- One column for the search over three tables, so that the planner can choose between the words and the order of names.
-- A row's lock is taken before its trigger looks around, so that of two sites saved at once neither is lost.
create function customer_keeps_words() returns trigger language plpgsql as $$
begin
  new.words := search_words(concat_ws(' ',
    new.name, new.email, new.phone, regexp_replace(new.phone, '[^0-9]', '', 'g'), new.street, new.city, new.postal_code,
    (select string_agg(concat_ws(' ', name, email, phone, regexp_replace(phone, '[^0-9]', '', 'g')), ' ')
      from contact where customer_id = new.id),
    (select string_agg(concat_ws(' ', name, street, city, postal_code), ' ') from site where customer_id = new.id)));
  return new;
end $$;
create trigger customer_words before insert or update on customer for each row execute function customer_keeps_words();

create function tell_customer_words() returns trigger language plpgsql security definer set search_path = public as $$
begin
  update customer set words = '' where id = new.customer_id;
  return null;
end $$;
create trigger contact_words after insert or update on contact for each row execute function tell_customer_words();
create trigger site_words after insert or update on site for each row execute function tell_customer_words();

-- What makers of solar modules allow when they are washed, as the office enters it.
create table module_maker (
  name                      text primary key check (btrim(name) <> '' and length(name) <= 100),
  max_hardness_mg_per_litre integer check (max_hardness_mg_per_litre between 1 and 2000),
  max_pressure_kpa          integer check (max_pressure_kpa between 1 and 50000),
  max_difference_celsius    integer check (max_difference_celsius between 1 and 100),
  alkali_forbidden          boolean not null,
  source                    text not null check (length(source) <= 500),
  version                   integer not null check (version >= 1),
  changed_by                uuid not null,
  changed_at                timestamptz not null
);
create unique index module_maker_by_name on module_maker (lower(name));

create table surface (
  id           uuid primary key,
  site_id      uuid not null references site (id),
  kind         text not null check (kind in ('ARRAY', 'SKYLIGHT', 'WINDOW', 'ROOF')),
  name         text not null check (btrim(name) <> '' and length(name) <= 200),
  extent       numeric(19, 6) not null check (extent > 0),
  unit         text not null,
  row_count    integer not null,
  module_maker text references module_maker (name),
  active       boolean not null,
  version      integer not null check (version >= 1),
  changed_by   uuid not null,
  changed_at   timestamptz not null,
  constraint surface_unit_fits check ((kind = 'ROOF' and unit in ('FTK', 'MTK')) or (kind <> 'ROOF' and unit = 'H87')),
  constraint surface_pieces_whole check (unit <> 'H87' or extent = trunc(extent)),
  constraint surface_rows check ((kind = 'ARRAY' and row_count between 1 and extent) or (kind <> 'ARRAY' and row_count = 0)),
  constraint surface_maker check (module_maker is null or kind = 'ARRAY'),
  unique (id, kind)
);
create index surface_by_site on surface (site_id);
create index surface_by_maker on surface (module_maker) where module_maker is not null;

create table surface_attribute (
  surface_id uuid not null,
  kind       text not null,
  attribute  text not null,
  value      integer not null,
  primary key (surface_id, attribute),
  foreign key (surface_id, kind) references surface (id, kind),
  constraint surface_attribute_in_range check (case attribute
    when 'STOREY' then value between 0 and 60
    when 'PITCH_DEGREES' then value between 0 and 90 and kind in ('ARRAY', 'SKYLIGHT', 'ROOF')
    when 'GROUND_MOUNT' then value between 0 and 1 and kind = 'ARRAY'
    when 'SOILING_GRADE' then value between 0 and 4 and kind in ('ARRAY', 'SKYLIGHT', 'WINDOW')
    when 'YEARS_SINCE_CLEAN' then value between 0 and 100
    when 'ROW_ACCESS' then value between 0 and 3 and kind = 'ARRAY'
    when 'DIVIDED_PANES' then value between 0 and 1 and kind = 'WINDOW'
    when 'SCREENS' then value between 0 and 1 and kind = 'WINDOW'
    when 'HARD_WATER' then value between 0 and 3 and kind in ('ARRAY', 'SKYLIGHT', 'WINDOW')
    when 'FROM_INSIDE' then value between 0 and 1 and kind in ('SKYLIGHT', 'WINDOW')
    when 'WEAK_SEALS' then value between 0 and 1 and kind in ('SKYLIGHT', 'WINDOW')
    when 'GROWTH_GRADE' then value between 0 and 4 and kind = 'ROOF'
    when 'FRAGILE_COVERING' then value between 0 and 1 and kind = 'ROOF'
    when 'GUTTERS_IN_WAY' then value between 0 and 1 and kind = 'ROOF'
    else false end)
);

-- Every extent that a surface has had. The visit lives to the right: a plain id here; null where the office changed it.
create table surface_count (
  surface_id  uuid not null references surface (id),
  entry       integer not null check (entry >= 1),
  from_extent numeric(19, 6) check (from_extent > 0),
  from_unit   text check (from_unit in ('H87', 'FTK', 'MTK')),
  to_extent   numeric(19, 6) not null check (to_extent > 0),
  to_unit     text not null check (to_unit in ('H87', 'FTK', 'MTK')),
  visit_id    uuid,
  counted_by  uuid not null,
  counted_at  timestamptz not null,
  primary key (surface_id, entry),
  check ((from_extent is null) = (from_unit is null)),
  check ((entry = 1) = (from_extent is null))
);
create trigger surface_count_append_only before update or delete on surface_count for each row execute function refuse_change();
create trigger surface_count_no_truncate before truncate on surface_count execute function refuse_change();

-- A file of customers is imported once.
create table customer_import (
  fingerprint char(64) primary key check (fingerprint ~ '^[0-9a-f]{64}$'), -- SHA-256 of the file
  row_count   integer not null check (row_count > 0),
  customers   integer not null check (customers > 0),
  sites       integer not null check (sites >= 0),
  surfaces    integer not null check (surfaces >= 0),
  imported_by uuid not null,
  imported_at timestamptz not null
);

grant select, insert on customer, contact, site, module_maker, surface, surface_count, customer_import to eaveside_app;
-- What a row belongs to, and what kind of surface it is, stays as it was entered.
grant update (name, kind, street, city, region, postal_code, country, email, phone, payment_term_days, note, active,
  version, changed_by, changed_at) on customer to eaveside_app;
grant update (name, role, email, phone, active, version, changed_by, changed_at) on contact to eaveside_app;
grant update (name, street, city, region, postal_code, country, access_notes, hazards, water_on_site, active, version,
  changed_by, changed_at) on site to eaveside_app;
grant update (max_hardness_mg_per_litre, max_pressure_kpa, max_difference_celsius, alkali_forbidden, source, version,
  changed_by, changed_at) on module_maker to eaveside_app;
grant update (name, extent, unit, row_count, module_maker, active, version, changed_by, changed_at) on surface
  to eaveside_app;
grant select, insert, update, delete on surface_attribute to eaveside_app;
