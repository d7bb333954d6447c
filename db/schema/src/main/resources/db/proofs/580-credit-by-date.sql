-- no customer's credit is below zero on any day, merged customers taken as one
select 'customer ' || days.kept as document, 'credit of ' || days.running || ' on ' || days.posting_date as detail
from (
  select coalesce(c.merged_into, c.id) as kept, e.posting_date,
    -sum(sum(e.amount)) over (partition by coalesce(c.merged_into, c.id) order by e.posting_date) as running
  from money_entry e join account a on a.code = e.account_code join customer c on c.id = e.customer_id
  where a.role = 'CUSTOMER_CREDIT' group by coalesce(c.merged_into, c.id), e.posting_date) days
left join (select coalesce(c.merged_into, c.id) as kept, max(b.last_day) as last_day
  from backdated_credit b join customer c on c.id = b.customer_id group by 1) b on b.kept = days.kept
where days.running < 0 and (b.last_day is null or days.posting_date > b.last_day)
order by days.posting_date, 1 limit 1
