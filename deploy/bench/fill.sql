-- Makes copies of the demo's invoices, as invoices without a visit, until there are :target of them, and pays all but
-- the first hundred copies. Numbers, entries, totals, open amounts and tax agree: deploy/eaveside verify must still pass.
create temporary table source on commit drop as
  select row_number() over (order by i.number) as k, count(*) over () as sources, i.*
  from invoice i where i.credit_memo_id is null and i.prepaid = 0 and i.rounding = 0 and i.gross > 0;

create temporary table copy on commit drop as
  select n, uuidv7() as id, uuidv7() as payment_id, s.id as source_id,
         greatest((select last_date from number_series where type = 'INVOICE'),
                  (select last_date from number_series where type = 'PAYMENT')) as day,
         (select last_number from number_series where type = 'INVOICE') + n as number, n > 100 as paid
  from generate_series(1, :target - (select count(*) from invoice)) n
  join source s on s.k = n % s.sources + 1;
create index on copy (source_id);
analyze copy;

insert into document (id, type, number, posting_date, service_date, summary, posted_by, posted_at, fingerprint)
  select c.id, 'INVOICE', c.number, c.day, c.day, d.summary, d.posted_by, d.posted_at, repeat('0', 64)
  from copy c join document d on d.id = c.source_id order by c.number;

insert into invoice
  select (jsonb_populate_record(i, jsonb_build_object(
      'id', c.id, 'number', c.number, 'invoice_date', c.day, 'due_date', c.day + 14, 'service_date', c.day,
      'visit_id', null, 'billed_sheet_id', null, 'open', case when c.paid then 0 else i.gross end))).*
  from copy c join invoice i on i.id = c.source_id order by c.number;

insert into invoice_line
  select (jsonb_populate_record(l, jsonb_build_object(
      'invoice_id', c.id, 'visit_line_id', null, 'finding_id', null))).*
  from copy c join invoice_line l on l.invoice_id = c.source_id where not l.no_charge;

insert into invoice_adjustment
  select (jsonb_populate_record(a, jsonb_build_object('invoice_id', c.id))).*
  from copy c join invoice_adjustment a on a.invoice_id = c.source_id
  left join invoice_line l on l.invoice_id = a.invoice_id and l.position = a.line_position
  where l.no_charge is distinct from true;

insert into invoice_tax
  select (jsonb_populate_record(t, jsonb_build_object('invoice_id', c.id))).*
  from copy c join invoice_tax t on t.invoice_id = c.source_id;

insert into money_entry
  select (jsonb_populate_record(e, jsonb_build_object(
      'document_id', c.id, 'posting_date', c.day, 'visit_id', null, 'finding_id', null))).*
  from copy c join money_entry e on e.document_id = c.source_id
  join account a on a.code = e.account_code where not a.needs_visit;

insert into document (id, type, number, posting_date, service_date, summary, posted_by, posted_at, fingerprint)
  select c.payment_id, 'PAYMENT',
         (select last_number from number_series where type = 'PAYMENT') + row_number() over (order by c.number),
         c.day, c.day, 'Payment of invoice ' || c.number, d.posted_by, d.posted_at, repeat('0', 64)
  from copy c join document d on d.id = c.source_id where c.paid order by c.number;

insert into payment (id, number, customer_id, amount, method)
  select d.id, d.number, i.customer_id, i.gross, 'CHECK'
  from copy c join document d on d.id = c.payment_id join invoice i on i.id = c.id;

insert into settlement (document_id, invoice_id, amount)
  select c.payment_id, c.id, i.gross from copy c join invoice i on i.id = c.id where c.paid;

insert into money_entry (document_id, line, posting_date, account_code, needs_line, needs_customer, needs_visit,
    needs_cost, amount, customer_id)
  select c.payment_id, side.line, c.day, a.code, a.needs_line, a.needs_customer, a.needs_visit, a.needs_cost,
         side.sign * i.gross, case when a.needs_customer then i.customer_id end
  from copy c join invoice i on i.id = c.id
  cross join (values (1, 'BANK', 1), (2, 'RECEIVABLES', -1)) side (line, role, sign)
  join account a on a.role = side.role where c.paid;

update number_series s set last_number = d.last, last_date = d.day
  from (select type, max(number) as last, max(posting_date) as day from document group by type) d
  where d.type = s.type and s.type in ('INVOICE', 'PAYMENT');

-- A customer with a site and a contact for every five invoices: first and last words of the demo's names put together anew, so that
-- a name is among thousands that share a word with it.
create temporary table more on commit drop as
  select uuidv7() as id, uuidv7() as site_id, f.id as source_id, split_part(f.name, ' ', 1) || ' ' ||
         substr('bdfghklmnprstvw', 1 + n % 15, 1) || substr('aeiou', 1 + n / 15 % 5, 1) || substr('ldrnmst', 1 + n / 75 % 7, 1)
         || substr(lower(regexp_replace(l.name, '^.* ', '')), 2) as name,
         '(' || 200 + n % 700 || ') 555-' || lpad((n % 10000)::text, 4, '0') as phone, n
  from generate_series(1, greatest(0, :target / 5 - (select count(*) from customer))::integer) n
  join (select row_number() over (order by id) as k, count(*) over () as of, id, name from customer) f on f.k = n % f.of + 1
  join (select row_number() over (order by name, id) as k, count(*) over () as of, name from customer) l on l.k = n / 7 % l.of + 1;

insert into customer (id, name, type, street, city, region, zip_code, country, email, phone, payment_term_days, note, active, version,
    changed_by, changed_at)
  select m.id, m.name, c.type, m.n || ' ' || c.street, c.city, c.region, c.zip_code, c.country, 'c' || m.n || '@example.com', m.phone,
         c.payment_term_days, '', true, 1, c.changed_by, c.changed_at from more m join customer c on c.id = m.source_id;
insert into site (id, customer_id, name, street, city, region, zip_code, country, access_notes, hazards, water_on_site, active, version,
    changed_by, changed_at)
  select m.site_id, m.id, 'Home', c.street, c.city, c.region, c.zip_code, c.country, '', '', true, true, 1, c.changed_by, c.changed_at
  from more m join customer c on c.id = m.id;
insert into contact (id, customer_id, name, role, email, phone, active, version, changed_by, changed_at)
  select uuidv7(), m.id, m.name || ' Jr', 'caretaker', '', '', true, 1, c.changed_by, c.changed_at from more m join customer c on c.id = m.id;
