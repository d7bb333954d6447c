-- a merged customer is one step from the one kept, and holds neither contacts nor credit
select 'customer ' || c.id as document,
  case when k.merged_into is not null then 'merged into ' || k.id || ', which is merged itself'
    when a.credit > 0 then 'merged, yet the working balance holds a credit of ' || a.credit
    else 'merged, yet a contact is kept with it' end as detail
from customer c join customer k on k.id = c.merged_into
left join customer_account a on a.customer_id = c.id
where k.merged_into is not null or a.credit > 0 or exists (select from contact where customer_id = c.id)
order by 1 limit 1
