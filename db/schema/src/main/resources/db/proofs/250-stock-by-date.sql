-- no location held less than nothing of a lot on any day, and no lot moved before it came
with daily as (
  select lot_id, location_id, posting_date, sum(quantity) as moved from stock_entry group by lot_id, location_id, posting_date
), held as (
  select lot_id, location_id, posting_date,
         sum(moved) over (partition by lot_id, location_id order by posting_date) as quantity
  from daily
)
select (
    select d.type || ' ' || d.number from stock_entry e join document d on d.id = e.document_id
    where e.lot_id = h.lot_id and e.location_id = h.location_id and e.posting_date = h.posting_date
    order by e.quantity, d.posted_at desc, d.id limit 1) as document,
  i.name || ' in ' || p.name || ' on ' || h.posting_date || ': ' || h.quantity || ' of a lot that came on ' || l.posting_date
    as detail
from held h join lot l on l.id = h.lot_id join stock_item i on i.id = l.item_id join location p on p.id = h.location_id
left join stock_date_exception x on x.lot_id = h.lot_id and x.location_id = h.location_id and h.posting_date <= x.until
where h.quantity < coalesce(x.low, 0) or (h.posting_date < l.posting_date and x.lot_id is null)
order by h.posting_date, i.name, p.name limit 1
