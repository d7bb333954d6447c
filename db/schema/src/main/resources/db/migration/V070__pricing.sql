-- Price books and quotes. A published book never changes, nor does a quote that was agreed or declined: by constructor,
-- by trigger, and by having no use case that changes them.

create table pricing_series (
  kind        text primary key check (kind in ('PRICE_BOOK', 'QUOTE')),
  last_number bigint not null default 0 check (last_number >= 0)
);
insert into pricing_series (kind) values ('PRICE_BOOK'), ('QUOTE');

-- The counter is locked from the draw to the commit, so the number before must be there when the next one arrives.
create function require_next_number() returns trigger language plpgsql as $$
declare
  before_is_there boolean;
begin
  if new.number is null or (tg_op = 'UPDATE' and old.number is not distinct from new.number) or new.number = 1 then
    return new;
  end if;
  execute format('select exists (select 1 from %I where number = $1)', tg_table_name) into before_is_there using new.number - 1;
  if not before_is_there then
    raise exception '% number % leaves a gap', tg_table_name, new.number using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;

create table price_book (
  id               uuid primary key,
  number           bigint unique check (number > 0), -- in order of publishing; null on a draft
  name             text not null check (btrim(name) <> ''),
  valid_from       date not null,
  visit_minimum    numeric(19, 3) not null check (visit_minimum >= 0),
  shared_reduction numeric(7, 4) not null check (shared_reduction >= 0 and shared_reduction < 100), -- per cent
  saved_by         uuid not null,
  saved_at         timestamptz not null,
  published_by     uuid,
  published_at     timestamptz,
  fingerprint      char(64) not null, -- of the last command, to tell a retry from a clash
  version          integer not null default 0,
  check ((number is null) = (published_at is null)),
  check ((number is null) = (published_by is null))
);
create index price_book_in_force on price_book (valid_from desc, number desc) where number is not null;
create trigger price_book_numbered before insert or update on price_book for each row execute function require_next_number();

create table price_book_line_minimum (
  price_book_id   uuid not null references price_book (id),
  service_line_id uuid not null references service_line (id),
  amount          numeric(19, 3) not null check (amount > 0),
  primary key (price_book_id, service_line_id)
);

create table offering_price (
  price_book_id uuid not null references price_book (id),
  offering_id   uuid not null references offering (id),
  base_quantity numeric(19, 6) not null check (base_quantity > 0), -- prices are per this much
  unit          text not null,
  position      integer not null check (position >= 0),
  primary key (price_book_id, offering_id)
);

create table quantity_step (
  price_book_id uuid not null,
  offering_id   uuid not null,
  from_quantity numeric(19, 6) not null check (from_quantity >= 0),
  price         numeric(19, 4) not null check (price > 0),
  primary key (price_book_id, offering_id, from_quantity),
  foreign key (price_book_id, offering_id) references offering_price (price_book_id, offering_id)
    deferrable initially deferred
);

create table surcharge (
  price_book_id uuid not null,
  offering_id   uuid not null,
  attribute     text not null,
  at_least      integer not null,
  percent       numeric(7, 4) check (percent > 0 and percent <= 500),
  per_unit      numeric(19, 4) check (per_unit > 0),
  primary key (price_book_id, offering_id, attribute, at_least),
  foreign key (price_book_id, offering_id) references offering_price (price_book_id, offering_id)
    deferrable initially deferred,
  check ((percent is null) <> (per_unit is null))
);

create function keep_published_book() returns trigger language plpgsql as $$
begin
  if old.published_at is not null then
    raise exception 'price book % is published: % refused', old.number, tg_op using errcode = 'integrity_constraint_violation';
  end if;
  return case tg_op when 'DELETE' then old else new end;
end $$;
create trigger price_book_keeps before update or delete on price_book for each row execute function keep_published_book();

-- The share lock makes a change of prices wait for a publication that is under way, and then refuses it.
create function keep_published_prices() returns trigger language plpgsql as $$
declare
  book uuid := case tg_op when 'DELETE' then old.price_book_id else new.price_book_id end;
begin
  perform 1 from price_book b where b.id = book and b.published_at is null for share;
  if not found then
    raise exception 'price book % is published: % on % refused', book, tg_op, tg_table_name
      using errcode = 'integrity_constraint_violation';
  end if;
  return case tg_op when 'DELETE' then old else new end;
end $$;
create trigger line_minimum_keeps before insert or update or delete on price_book_line_minimum
  for each row execute function keep_published_prices();
create trigger offering_price_keeps before insert or update or delete on offering_price
  for each row execute function keep_published_prices();
create trigger quantity_step_keeps before insert or update or delete on quantity_step
  for each row execute function keep_published_prices();
create trigger surcharge_keeps before insert or update or delete on surcharge
  for each row execute function keep_published_prices();

-- What no single row shows: a published book has prices, each from zero on, and none rises with the quantity.
create function require_whole_book() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from offering_price p where p.price_book_id = new.id) then
    raise exception 'price book % has no prices', new.id using errcode = 'integrity_constraint_violation';
  end if;
  if exists (select 1 from offering_price p where p.price_book_id = new.id and not exists (
      select 1 from quantity_step s
      where s.price_book_id = p.price_book_id and s.offering_id = p.offering_id and s.from_quantity = 0)) then
    raise exception 'price book % has an offering without a price from zero on', new.id
      using errcode = 'integrity_constraint_violation';
  end if;
  if exists (select 1 from (
      select price, lag(price) over (partition by offering_id order by from_quantity) as lower_step
      from quantity_step where price_book_id = new.id) steps where price > lower_step) then
    raise exception 'price book % has a unit price that rises with the quantity', new.id
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger price_book_whole before update on price_book for each row
  when (old.published_at is null and new.published_at is not null) execute function require_whole_book();
create function refuse_born_published() returns trigger language plpgsql as $$
begin
  raise exception 'a price book begins as a draft' using errcode = 'integrity_constraint_violation';
end $$;
create trigger price_book_begins before insert on price_book for each row
  when (new.published_at is not null) execute function refuse_born_published();

create table quote (
  id               uuid primary key,
  number           bigint not null unique check (number > 0),
  customer_id      uuid not null references customer (id),
  site_id          uuid not null,
  price_book_id    uuid not null references price_book (id),
  made_on          date not null,
  valid_until      date not null,
  status           text not null check (status in ('DRAFT', 'OFFERED', 'AGREED', 'DECLINED')),
  came_from        uuid, -- the finding; a plain id, since findings lie to the right
  note             text not null default '',
  driving_minutes  integer not null check (driving_minutes >= 0),
  distance         numeric(19, 6) not null check (distance >= 0),
  distance_unit    text not null,
  total            numeric(19, 3) not null check (total >= 0),
  expected_minutes numeric(19, 6) not null check (expected_minutes >= 0),
  expected_cost    numeric(19, 3) check (expected_cost >= 0), -- null where a rate or a consumable's cost is not known
  saved_by         uuid not null,
  saved_at         timestamptz not null,
  decided_by       uuid,
  decided_at       timestamptz,
  decision         text not null default '',
  made_fingerprint char(64) not null, -- of the command that made it
  fingerprint      char(64) not null, -- of the last command
  version          integer not null default 0,
  foreign key (site_id, customer_id) references site (id, customer_id),
  check (valid_until >= made_on),
  check ((decided_at is not null) = (status in ('AGREED', 'DECLINED'))),
  check ((decided_at is null) = (decided_by is null))
);
create index quote_by_customer on quote (customer_id, number desc);
create index quote_by_site on quote (site_id);
create index quote_by_status on quote (status, number desc);
create index quote_by_finding on quote (came_from) where came_from is not null;
create trigger quote_numbered before insert on quote for each row execute function require_next_number();

create function keep_quote() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' or old.status in ('AGREED', 'DECLINED') then
    raise exception 'quote % is kept as it is: % refused', old.number, tg_op using errcode = 'integrity_constraint_violation';
  end if;
  if new.number <> old.number or new.customer_id <> old.customer_id or new.site_id <> old.site_id
      or new.made_fingerprint <> old.made_fingerprint then
    raise exception 'the number, customer and site of quote % never change', old.number
      using errcode = 'integrity_constraint_violation';
  end if;
  if new.status in ('AGREED', 'DECLINED') and new.price_book_id <> old.price_book_id then
    raise exception 'quote % is agreed at other prices than it shows', old.number using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger quote_keeps before update or delete on quote for each row execute function keep_quote();

create function require_published_book() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from price_book b where b.id = new.price_book_id and b.published_at is not null) then
    raise exception 'price book % is not published', new.price_book_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger quote_from_published before insert or update of price_book_id on quote
  for each row execute function require_published_book();

create table quote_line (
  id               uuid primary key,
  quote_id         uuid not null references quote (id),
  position         integer not null check (position >= 0),
  offering_id      uuid not null references offering (id),
  service_line_id  uuid not null references service_line (id),
  surface_id       uuid references surface (id),
  quantity         numeric(19, 6) not null check (quantity > 0),
  unit             text not null,
  unit_price       numeric(19, 4) not null check (unit_price >= 0),
  base_quantity    numeric(19, 6) not null check (base_quantity > 0),
  base_unit        text not null,
  net_before       numeric(19, 3) not null check (net_before >= 0),
  top_up           numeric(19, 3) not null check (top_up >= 0),
  net              numeric(19, 3) not null check (net = net_before + top_up),
  standard_minutes numeric(19, 6) not null check (standard_minutes >= 0),
  expected_cost    numeric(19, 3) check (expected_cost >= 0),
  unique (quote_id, position)
);

-- The structured explanation of a line's price: which figures each kind carries, and no other.
create table quote_line_reason (
  quote_line_id uuid not null references quote_line (id),
  position      integer not null check (position >= 0),
  kind          text not null check (kind in
    ('FROM_BOOK', 'SURCHARGED', 'SHARED_VISIT', 'TO_LINE_MINIMUM', 'TO_VISIT_MINIMUM')),
  amount        numeric(19, 4) not null check (amount >= 0), -- per base quantity, or of a top-up the line's share
  step_from     numeric(19, 6),
  reached       numeric(19, 6),
  reached_unit  text,
  attribute     text,
  value         integer, -- of the attribute, or how many services share the visit
  at_least      integer,
  percent       numeric(7, 4),
  minimum       numeric(19, 3),
  primary key (quote_line_id, position),
  check ((kind = 'FROM_BOOK') = (step_from is not null and reached is not null and reached_unit is not null)),
  check ((kind = 'SURCHARGED') = (attribute is not null and at_least is not null)),
  check ((kind in ('SURCHARGED', 'SHARED_VISIT')) = (value is not null)),
  check (kind <> 'SHARED_VISIT' or percent is not null),
  check ((kind in ('TO_LINE_MINIMUM', 'TO_VISIT_MINIMUM')) = (minimum is not null)),
  check ((kind = 'FROM_BOOK') = (position = 0))
);

create function keep_quote_line() returns trigger language plpgsql as $$
declare
  quote_of uuid := case tg_op when 'DELETE' then old.quote_id else new.quote_id end;
begin
  perform 1 from quote q where q.id = quote_of and q.status in ('DRAFT', 'OFFERED') for share;
  if not found then
    raise exception 'quote % is kept as it is: % on its lines refused', quote_of, tg_op
      using errcode = 'integrity_constraint_violation';
  end if;
  return case tg_op when 'DELETE' then old else new end;
end $$;
create trigger quote_line_keeps before insert or update or delete on quote_line for each row execute function keep_quote_line();

create function keep_quote_line_reason() returns trigger language plpgsql as $$
declare
  line_of uuid := case tg_op when 'DELETE' then old.quote_line_id else new.quote_line_id end;
begin
  perform 1 from quote q join quote_line l on l.quote_id = q.id
  where l.id = line_of and q.status in ('DRAFT', 'OFFERED') for share of q;
  if not found then
    raise exception 'the explanation of line % is kept as it is: % refused', line_of, tg_op
      using errcode = 'integrity_constraint_violation';
  end if;
  return case tg_op when 'DELETE' then old else new end;
end $$;
create trigger quote_line_reason_keeps before insert or update or delete on quote_line_reason
  for each row execute function keep_quote_line_reason();

-- A quote's total, minutes and cost are those of its lines; checked at commit.
create function require_quote_sums(quote_of uuid) returns void language plpgsql as $$
declare
  said record;
  lines record;
begin
  select q.number, q.total, q.expected_minutes, q.expected_cost into said from quote q where q.id = quote_of;
  select sum(l.net) as total, sum(l.standard_minutes) as minutes,
    case when count(*) = count(l.expected_cost) then sum(l.expected_cost) end as cost
  into lines from quote_line l where l.quote_id = quote_of;
  if said.total is distinct from lines.total or said.expected_minutes is distinct from lines.minutes
      or said.expected_cost is distinct from lines.cost then
    raise exception 'quote % says % but its lines add up to %', said.number, said.total, lines.total
      using errcode = 'integrity_constraint_violation';
  end if;
end $$;
create function require_sums_of_quote() returns trigger language plpgsql as $$
begin
  perform require_quote_sums(new.id);
  return null;
end $$;
create function require_sums_of_line() returns trigger language plpgsql as $$
begin
  perform require_quote_sums(case tg_op when 'DELETE' then old.quote_id else new.quote_id end);
  return null;
end $$;
create constraint trigger quote_adds_up after insert or update on quote deferrable initially deferred
  for each row execute function require_sums_of_quote();
create constraint trigger quote_line_adds_up after insert or delete on quote_line deferrable initially deferred
  for each row execute function require_sums_of_line();

grant select, update on pricing_series to eaveside_app;
grant select, insert, update on price_book to eaveside_app;
grant select, insert, delete on price_book_line_minimum, offering_price, quantity_step, surcharge to eaveside_app;
grant select, insert, update on quote to eaveside_app;
grant select, insert, delete on quote_line, quote_line_reason to eaveside_app;
