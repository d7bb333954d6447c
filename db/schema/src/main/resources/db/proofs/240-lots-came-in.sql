-- every lot came in by its document, in its quantity and at its cost
select d.kind || ' ' || d.number as document, i.name || ': the lot says ' || l.quantity || ' worth ' || l.value as detail
from lot l join document d on d.id = l.document_id join stock_item i on i.id = l.item_id
where not exists (select 1 from stock_entry e
  where e.document_id = l.document_id and e.lot_id = l.id and e.quantity = l.quantity and e.value = l.value)
order by d.posted_at limit 1
