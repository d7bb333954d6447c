-- every reversal mirrors its document in full
select d.type || ' ' || d.number as document, 'does not mirror the document that it reverses' as detail
from document d
where d.reverses is not null and exists (
  (select account_code, -amount as amount, service_line_id, visit_id, customer_id, cost_type, finding_id from money_entry where document_id = d.reverses
   except all
   select account_code, amount, service_line_id, visit_id, customer_id, cost_type, finding_id from money_entry where document_id = d.id)
  union all
  (select account_code, amount, service_line_id, visit_id, customer_id, cost_type, finding_id from money_entry where document_id = d.id
   except all
   select account_code, -amount, service_line_id, visit_id, customer_id, cost_type, finding_id from money_entry where document_id = d.reverses))
order by d.posted_at limit 1
