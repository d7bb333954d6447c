-- no customer's credit is below zero on any day
select 'customer ' || days.customer_id as document, 'credit of ' || days.running || ' on ' || days.posting_date as detail
from (
  select e.customer_id, e.posting_date, -sum(sum(e.amount)) over (partition by e.customer_id order by e.posting_date) as running
  from money_entry e join account a on a.code = e.account_code
  where a.role = 'CUSTOMER_CREDIT' group by e.customer_id, e.posting_date) days
left join backdated_credit b on b.customer_id = days.customer_id
where days.running < 0 and (b.last_day is null or days.posting_date > b.last_day)
order by days.posting_date, 1 limit 1
