-- every entry lies in a period of the books, on its document's date
select d.type || ' ' || d.number as document, 'posted on ' || e.posting_date || ', outside the books' as detail
from money_entry e join document d on d.id = e.document_id
where e.posting_date <> d.posting_date
   or not exists (select 1 from period p where p.first_day = date_trunc('month', d.posting_date)::date)
order by d.posted_at limit 1
