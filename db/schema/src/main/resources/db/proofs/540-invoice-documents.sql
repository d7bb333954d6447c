-- every posted invoice, credit note and payment has its document, and the reverse
select d.kind || ' ' || d.number as document, 'has no ' || lower(d.kind) || ' of that number behind it' as detail
from document d
where (d.kind = 'INVOICE' and not exists (select 1 from invoice i where i.id = d.id and i.number = d.number))
   or (d.kind = 'CREDIT_NOTE' and not exists (select 1 from invoice i where i.credit_note_id = d.id and i.id = d.reverses))
   or (d.kind = 'PAYMENT' and not exists (select 1 from payment p where p.id = d.id and p.number = d.number))
   or (d.kind in ('INVOICE', 'PAYMENT', 'CREDIT_MATCH') and exists (
        select 1 from settlement s join document r on r.reverses = d.id
        left join settlement back on back.document_id = r.id and back.invoice_id = s.invoice_id
        where s.document_id = d.id and back.amount is distinct from -s.amount))
order by 1 limit 1
