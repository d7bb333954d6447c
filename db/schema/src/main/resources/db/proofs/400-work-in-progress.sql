-- work in progress = cost of the done visits that are neither billed nor closed
select coalesce('visit ' || coalesce(b.visit_id, c.visit_id), 'work in progress') as document,
  'the ledger holds ' || coalesce(b.amount, 0) || ' on service line ' || coalesce(b.service_line_id, c.service_line_id)
    || ' for ' || coalesce(b.cost_type, c.cost_type) || ', the sheet in force says ' || coalesce(c.amount, 0) as detail
from (
  select e.visit_id, e.service_line_id, e.cost_type, sum(e.amount) as amount
  from money_entry e join account a on a.code = e.account_code
  where a.role = 'WORK_IN_PROGRESS'
  group by e.visit_id, e.service_line_id, e.cost_type having sum(e.amount) <> 0) b
full join (
  select v.id as visit_id, s.service_line_id, s.cost_type, s.amount
  from visit v join job_sheet_cost s on s.sheet_id = v.sheet_id
  where v.status = 'COMPLETED') c
  on c.visit_id = b.visit_id and c.service_line_id = b.service_line_id and c.cost_type = b.cost_type
where coalesce(b.amount, 0) <> coalesce(c.amount, 0)
order by 1 limit 1
