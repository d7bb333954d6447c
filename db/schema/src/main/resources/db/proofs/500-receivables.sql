-- receivables = open invoices, customer by customer; merged customers are one
select 'customer ' || coalesce(c.merged_into, both_sides.customer_id) as document,
  'receivables say ' || sum(books) || ', open invoices ' || sum(invoices) as detail
from (
  select e.customer_id, sum(e.amount) as books, 0 as invoices
  from money_entry e join account a on a.code = e.account_code where a.role = 'RECEIVABLES' group by e.customer_id
  union all
  select customer_id, 0, sum(open) from invoice group by customer_id) both_sides
left join customer c on c.id = both_sides.customer_id
group by coalesce(c.merged_into, both_sides.customer_id)
having sum(books) <> sum(invoices)
order by 1 limit 1
