-- every invoice's open balance = its gross total less what settles it
select 'invoice ' || i.number as document,
  'open balance ' || i.open || ', total ' || i.gross + i.rounding || ', settled ' || coalesce(s.settled, 0)
    || case when i.credit_memo_id is null then '' else ', credited' end as detail
from invoice i left join (select invoice_id, sum(amount) as settled from settlement group by invoice_id) s on s.invoice_id = i.id
where i.open <> (case when i.credit_memo_id is null then i.gross + i.rounding else 0 end) - coalesce(s.settled, 0)
order by i.number limit 1
