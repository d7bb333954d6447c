-- every document's entries balance
select d.type || ' ' || d.number as document, 'out of balance by ' || sum(e.amount) as detail
from document d join money_entry e on e.document_id = d.id join account a on a.code = e.account_code
group by d.id, d.type, d.number, a.type = 'MEMORANDUM'
having sum(e.amount) <> 0
order by min(d.posted_at) limit 1
