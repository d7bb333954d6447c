-- Which kind of cost an expense account counts as where no visit is charged with it, for the unassigned row of the
-- margin report. An account without one counts as overhead.
alter table account add column cost_kind text check (cost_kind in ('LABOUR', 'CONSUMABLES', 'TRAVEL', 'OVERHEAD'));
update account set cost_kind = case
    when code in ('6000', '6010', '6090') then 'LABOUR'
    when code in ('6100', '6110', '6190') then 'TRAVEL'
    when code in ('5100', '5110') then 'CONSUMABLES'
    when code in ('6200', '6210', '6290') then 'OVERHEAD'
  end
where kind = 'EXPENSE';
