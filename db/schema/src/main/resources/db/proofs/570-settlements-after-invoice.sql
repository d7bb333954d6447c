-- nothing settles an invoice before the invoice's own date
select d.type || ' ' || d.number as document, 'counts on ' || d.posting_date || ', invoice ' || i.number || ' on ' || i.invoice_date as detail
from settlement s join document d on d.id = s.document_id join invoice i on i.id = s.invoice_id
where d.posting_date < i.invoice_date
  and not exists (select 1 from backdated_document b where b.document_id = d.id and b.rests_on = i.id)
order by d.type, d.number limit 1
