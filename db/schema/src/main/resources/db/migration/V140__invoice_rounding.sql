-- The rounding of an invoice's amount due (EN 16931 BT-114): what was drafted is what is issued, posted and owed. It has
-- an account of its own, so that revenue stays the invoice's net total.

do $$
declare
  free text;
begin
  select to_char(n, 'FM0000') into free from generate_series(4900, 4999) n
    where not exists (select 1 from account a where a.code = to_char(n, 'FM0000')) order by n limit 1;
  insert into account (code, name, kind, role) values (free,
    case when exists (select 1 from account where name = 'Rounding') then 'Rounding of invoices' else 'Rounding' end,
    'REVENUE', 'ROUNDING');
end $$;

alter table invoice_draft add column rounding numeric(19, 3) not null default 0 check (abs(rounding) <= 100);
alter table invoice add column rounding numeric(19, 3) not null default 0 check (abs(rounding) <= 100);

-- What is prepaid and what is open go up to the rounded total now.
do $$
declare
  bound text;
begin
  for bound in select conname from pg_constraint where conrelid = 'invoice'::regclass and contype = 'c'
      and pg_get_constraintdef(oid) ~ 'gross' and pg_get_constraintdef(oid) ~ '(prepaid|open)' loop
    execute format('alter table invoice drop constraint %I', bound);
  end loop;
end $$;
alter table invoice add constraint invoice_rounded_total check (gross + rounding >= 0);
alter table invoice add constraint invoice_prepaid_bounds check (prepaid between 0 and gross + rounding);
alter table invoice add constraint invoice_open_bounds check (open between 0 and gross + rounding);

-- No tax takes more than what is taxed.
alter table invoice_line add constraint invoice_line_rate check (tax_rate <= 100);
alter table invoice_adjustment add constraint invoice_adjustment_rate check (tax_rate <= 100);
alter table invoice_tax add constraint invoice_tax_rate check (tax_rate <= 100);
