-- customer credit = unmatched money, customer by customer; merged customers are one
select 'customer ' || coalesce(c.merged_into, sides.customer_id) as document,
  'the account says ' || sum(books) || ', the working balance ' || sum(working) || ', payments less settlements ' || sum(unmatched) as detail
from (
  select e.customer_id, -sum(e.amount) as books, 0 as working, 0 as unmatched
  from money_entry e join account a on a.code = e.account_code where a.role = 'CUSTOMER_CREDIT' group by e.customer_id
  union all
  select customer_id, 0, credit, 0 from customer_account
  union all
  select p.customer_id, 0, 0, sum(p.amount) from payment p
  where not exists (select 1 from document r where r.reverses = p.id) group by p.customer_id
  union all
  select i.customer_id, 0, 0, -sum(s.amount) from settlement s join invoice i on i.id = s.invoice_id group by i.customer_id) sides
left join customer c on c.id = sides.customer_id
group by coalesce(c.merged_into, sides.customer_id) having sum(books) <> sum(working) or sum(books) <> sum(unmatched)
order by 1 limit 1
