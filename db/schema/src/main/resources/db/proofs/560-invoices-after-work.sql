-- no invoice counts before the sheet of the visit that it bills
select 'invoice ' || i.number as document, 'is dated ' || i.invoice_date || ', its sheet counts from ' || d.posting_date as detail
from invoice i join document d on d.id = i.billed_sheet_id
where i.invoice_date < d.posting_date
  and not exists (select 1 from backdated_document b where b.document_id = i.id and b.rests_on = d.id)
order by i.number limit 1
