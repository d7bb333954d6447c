-- every lot came in by its document's line, in its quantity and at its cost, in the order of the documents
with ordered as (
  select l.id, l.arrival, lag(l.arrival) over (partition by d.type order by d.number, l.line) as before
  from lot l join document d on d.id = l.document_id
)
select d.type || ' ' || d.number as document,
  i.name || case when o.arrival < o.before then ': the lot stands before one that came in earlier'
    else ': the lot says ' || l.quantity || ' worth ' || l.value end as detail
from lot l join ordered o on o.id = l.id join document d on d.id = l.document_id join stock_item i on i.id = l.item_id
where o.arrival < o.before or not exists (select 1 from stock_entry e
  where e.document_id = l.document_id and e.line = l.line and e.lot_id = l.id and e.quantity = l.quantity
    and e.value = l.value)
order by d.posted_at limit 1
