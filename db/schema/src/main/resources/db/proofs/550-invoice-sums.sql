-- every invoice's totals = the sums of its lines, allowances, charges and taxes
select 'invoice ' || i.number as document,
  'lines ' || l.net || ' against ' || i.line_sum || ', tax ' || t.tax || ' against ' || i.tax || ', taxable ' || t.taxable
    || ' against ' || i.net as detail
from invoice i
cross join lateral (select coalesce(sum(net), 0) as net from invoice_line where invoice_id = i.id) l
cross join lateral (select coalesce(sum(tax), 0) as tax, coalesce(sum(taxable), 0) as taxable from invoice_tax where invoice_id = i.id) t
cross join lateral (select
  coalesce(sum(amount) filter (where type = 'ALLOWANCE'), 0) as allowances,
  coalesce(sum(amount) filter (where type = 'CHARGE'), 0) as charges
  from invoice_adjustment where invoice_id = i.id and line_position is null) a
where l.net <> i.line_sum or t.tax <> i.tax or t.taxable <> i.net or a.allowances <> i.allowances or a.charges <> i.charges
order by i.number limit 1
