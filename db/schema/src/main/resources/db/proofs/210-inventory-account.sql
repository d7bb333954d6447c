-- the inventory account equals the value of all stock
with money as (
  select e.document_id, sum(e.amount) as value
  from money_entry e join account a on a.code = e.account_code
  where a.role = 'INVENTORY' group by e.document_id
), stock as (
  select document_id, sum(value) as value from stock_entry group by document_id
), parted as (
  select d.type || ' ' || d.number as document,
         'moved ' || coalesce(m.value, 0) || ' on the account, ' || coalesce(s.value, 0) || ' in stock' as detail
  from money m full join stock s using (document_id) join document d on d.id = document_id
  where coalesce(m.value, 0) <> coalesce(s.value, 0)
  order by d.posted_at, d.id limit 1
)
select document, detail from parted
union all
select 'inventory account', 'exceeds the remaining lots by ' || off from (
  select (select coalesce(sum(value), 0) from money) - (select coalesce(sum(value), 0) from lot_stock) as off) totals
where off <> 0 and not exists (select 1 from parted)
