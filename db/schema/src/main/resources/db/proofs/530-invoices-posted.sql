-- every invoice's entries = its document: receivables, tax payable, revenue and no-charge work
select 'invoice ' || i.number as document, 'its entries on ' || expected.role || ' sum to ' || coalesce(e.amount, 0)
  || ', the invoice says ' || expected.amount as detail
from invoice i
cross join lateral (values
  ('RECEIVABLES', i.gross + i.rounding - i.prepaid), ('CUSTOMER_CREDIT', i.prepaid), ('REVENUE', -i.net), ('ROUNDING', -i.rounding),
  ('TAX_PAYABLE', -(select coalesce(sum(t.tax), 0) from invoice_tax t where t.invoice_id = i.id)),
  ('NO_CHARGE_GIVEN', (select coalesce(sum(a.amount), 0) from invoice_line l join invoice_adjustment a
     on a.invoice_id = l.invoice_id and a.line_position = l.position where l.invoice_id = i.id and l.no_charge))
  ) expected (role, amount)
left join lateral (select sum(m.amount) as amount from money_entry m join account a on a.code = m.account_code
  where m.document_id = i.id and a.role = expected.role) e on true
where coalesce(e.amount, 0) <> expected.amount
order by i.number limit 1
