-- Stock by the day: which lot is older is told by its receipt, and nothing leaves a place before it came there.

-- The stock entry that brought a lot in, its day in the books, and the order in which lots came in. Lots received on one day
-- leave in that order, never by an id that a client made. Posting holds the counter of its number series until the commit, so
-- the lots of a series arrive in the order of their documents and lines.
alter table lot
  add column posting_date date,
  add column line integer,
  add column arrival bigint;
update lot l set
  posting_date = d.posting_date,
  line = (select min(e.line) from stock_entry e where e.document_id = l.document_id and e.lot_id = l.id)
  from document d where d.id = l.document_id;
-- Numbers order the documents of a series, the clock those of different ones; a clock that was set back never wins over a number.
with posted as (
  select d.id, d.kind, d.number,
         max(d.posted_at) over (partition by d.kind order by d.number) as at
  from document d where exists (select 1 from lot l where l.document_id = d.id)
), ordered as (
  select l.id, row_number() over (order by p.at, p.kind, p.number, l.line) as arrival
  from lot l join posted p on p.id = l.document_id
)
update lot l set arrival = o.arrival from ordered o where o.id = l.id;
alter table lot
  alter column posting_date set not null,
  alter column line set not null,
  alter column arrival set not null,
  add unique (arrival),
  add unique (document_id, line),
  add foreign key (document_id, posting_date) references document (id, posting_date),
  add foreign key (document_id, line) references stock_entry (document_id, line) deferrable initially deferred;
alter table lot alter column arrival add generated always as identity;
select setval(pg_get_serial_sequence('lot', 'arrival'), (select coalesce(max(arrival), 0) + 1 from lot), false);
drop index lot_newest;
create index lot_newest on lot (item_id, received_on desc, posting_date desc, arrival desc);
drop index lot_by_document; -- the key by document and line serves it

-- Entries that were posted before this rule stay as they are. What they broke is named here once, so that the proof holds every
-- other lot, and these from then on, to it. Nothing ever adds to this.
create table stock_date_exception (
  lot_id   uuid not null references lot (id),
  place_id uuid not null references place (id),
  until    date not null,                                   -- the last day on which the entries break the rule
  low      numeric(19, 6) not null check (low <= 0),        -- the least that the place held of the lot
  primary key (lot_id, place_id)
);
insert into stock_date_exception (lot_id, place_id, until, low)
  select r.lot_id, r.place_id,
         max(r.posting_date) filter (where r.quantity < 0 or r.posting_date < l.posting_date),
         least(0, min(r.quantity))
  from (
    select e.lot_id, e.place_id, e.posting_date,
           sum(sum(e.quantity)) over (partition by e.lot_id, e.place_id order by e.posting_date) as quantity
    from stock_entry e group by e.lot_id, e.place_id, e.posting_date) r
  join lot l on l.id = r.lot_id
  group by r.lot_id, r.place_id
  having bool_or(r.quantity < 0 or r.posting_date < l.posting_date);
grant select on stock_date_exception to eaveside_app;

-- What a place holds of a lot is never below zero at the end of any day from the entry's day on: the balance now, less what came
-- after each of these days. The lot's row in lot_stock is locked since the entry moved it, so rivals are seen.
create function keep_stock_by_date() returns trigger language plpgsql as $$
declare
  came date;
  low numeric;
begin
  select posting_date into came from lot where id = new.lot_id;
  if new.posting_date < came then
    raise exception 'stock entry of % is dated before lot % came on %', new.posting_date, new.lot_id, came
      using errcode = 'integrity_constraint_violation';
  end if;
  if new.quantity < 0 then
    select s.quantity - greatest(0, max(l.quantity)) into low
    from lot_stock s left join (
      select sum(sum(e.quantity)) over (order by e.posting_date desc) as quantity
      from stock_entry e
      where e.lot_id = new.lot_id and e.place_id = new.place_id and e.posting_date > new.posting_date
      group by e.posting_date) l on true
    where s.lot_id = new.lot_id and s.place_id = new.place_id
    group by s.quantity;
    if low < 0 then
      raise exception 'place % would hold % of lot % on or after %', new.place_id, low, new.lot_id, new.posting_date
        using errcode = 'integrity_constraint_violation';
    end if;
  end if;
  return null;
end $$;
create constraint trigger stock_entry_by_date after insert on stock_entry deferrable initially deferred
  for each row execute function keep_stock_by_date();

-- The day on which an entry's goods really moved; a reversal undoes the day of what it reverses.
create or replace view stock_movement as
  select e.document_id, e.line, d.kind as document_kind, d.number, e.posting_date, d.service_date, d.summary,
         e.item_id, i.name as item_name, i.base_unit, e.lot_id, l.label as lot_label, e.place_id, p.name as place_name,
         e.quantity, e.value, coalesce(o.service_date, d.service_date) as moved_on
  from stock_entry e
  join document d on d.id = e.document_id
  left join document o on o.id = d.reverses
  join stock_item i on i.id = e.item_id
  join lot l on l.id = e.lot_id
  join place p on p.id = e.place_id;
