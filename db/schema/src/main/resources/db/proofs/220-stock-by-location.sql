-- stock quantity and value by item and location: the entries equal the remaining lots
with entries as (
  select lot_id, location_id, sum(quantity) as quantity, sum(value) as value from stock_entry group by lot_id, location_id
)
select coalesce((
    select d.type || ' ' || d.number from stock_entry last join document d on d.id = last.document_id
    where last.lot_id = l.id and last.location_id = p.id order by d.posted_at desc, d.id desc limit 1), 'no document') as document,
  i.name || ' in ' || p.name || ': entries say ' || coalesce(e.quantity, 0) || ' worth ' || coalesce(e.value, 0)
    || ', the lot ' || coalesce(s.quantity, 0) || ' worth ' || coalesce(s.value, 0) as detail
from entries e full join lot_stock s using (lot_id, location_id)
join lot l on l.id = lot_id join stock_item i on i.id = l.item_id join location p on p.id = location_id
where coalesce(e.quantity, 0) <> coalesce(s.quantity, 0) or coalesce(e.value, 0) <> coalesce(s.value, 0)
order by i.name, p.name limit 1
