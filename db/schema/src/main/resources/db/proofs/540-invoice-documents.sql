-- every posted invoice, credit memo and payment has its document, and the reverse
select d.type || ' ' || d.number as document, 'has no ' || lower(d.type) || ' of that number behind it' as detail
from document d
where (d.type = 'INVOICE' and not exists (select 1 from invoice i where i.id = d.id and i.number = d.number))
   or (d.type = 'CREDIT_MEMO' and not exists (select 1 from invoice i where i.credit_memo_id = d.id and i.id = d.reverses))
   or (d.type = 'PAYMENT' and not exists (select 1 from payment p where p.id = d.id and p.number = d.number))
   or (d.type in ('INVOICE', 'PAYMENT', 'CREDIT_APPLICATION') and exists (
        select 1 from settlement s join document r on r.reverses = d.id
        left join settlement back on back.document_id = r.id and back.invoice_id = s.invoice_id
        where s.document_id = d.id and back.amount is distinct from -s.amount))
order by 1 limit 1
