-- every reversal mirrors the stock entries of its document in full
select d.type || ' ' || d.number as document, 'does not mirror the stock that it reverses' as detail
from document d
where d.reverses is not null and exists (
  (select lot_id, location_id, -quantity as quantity, -value as value from stock_entry where document_id = d.reverses
   except all
   select lot_id, location_id, quantity, value from stock_entry where document_id = d.id)
  union all
  (select lot_id, location_id, quantity, value from stock_entry where document_id = d.id
   except all
   select lot_id, location_id, -quantity, -value from stock_entry where document_id = d.reverses))
order by d.posted_at limit 1
