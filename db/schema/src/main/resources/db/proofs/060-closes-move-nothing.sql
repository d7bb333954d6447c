-- the close of a month empties no account; what closes moved in former times nets to nothing where it counts
select d.type || ' ' || d.number as document, 'moves money between accounts' as detail
from document d
where d.type = 'PERIOD_CLOSE' and exists (select 1 from money_entry e where e.document_id = d.id)
  and not exists (select 1 from superseded_close s where s.document_id = d.id)
union all
select d.type || ' ' || d.number, 'is left out of every figure, though it is worth ' || sum(e.amount) || ' on '
  || coalesce(a.variance_code, a.code)
from superseded_close s join document d on d.id = s.document_id join money_entry e on e.document_id = d.id
join account a on a.code = e.account_code
group by d.id, d.type, d.number, coalesce(a.variance_code, a.code)
having sum(e.amount) <> 0 or d.type <> 'PERIOD_CLOSE'
order by 1 limit 1
