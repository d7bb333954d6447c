-- Nothing counts before what it rests on: an invoice not before the sheet of the visit that it bills, a settlement not
-- before the invoice that it settles, and credit is not used before it is there. Documents that were posted otherwise
-- stay as they are, since posted documents never change: they are written down here once, and the proofs pass over them.

alter table invoice add column billed_sheet_id uuid references document (id); -- of the visit, as it stood when issued
alter table invoice disable trigger invoice_keeps;
update invoice i set billed_sheet_id = v.sheet_id from visit v where v.id = i.visit_id and v.invoice_id = i.id;
alter table invoice enable trigger invoice_keeps;

create table backdated_document (
  document_id uuid not null references document (id),
  rests_on    uuid not null references document (id), -- and counts on a later day
  primary key (document_id, rests_on)
);
insert into backdated_document
  select d.id, i.id from settlement s join document d on d.id = s.document_id join invoice i on i.id = s.invoice_id
    where d.posting_date < i.invoice_date
  union
  select i.id, d.id from invoice i join document d on d.id = i.billed_sheet_id where i.invoice_date < d.posting_date;

create table backdated_credit (
  customer_id uuid primary key references customer (id),
  last_day    date not null -- the last one that the customer's credit stood below zero on
);
insert into backdated_credit
  select customer_id, max(last_day) from (
    select customer_id, running,
      coalesce(lead(posting_date) over (partition by customer_id order by posting_date) - 1, posting_date) as last_day
    from (select e.customer_id, e.posting_date, -sum(sum(e.amount)) over (partition by e.customer_id order by e.posting_date) as running
      from money_entry e join account a on a.code = e.account_code
      where a.role = 'CUSTOMER_CREDIT' group by e.customer_id, e.posting_date) days) stretches
  where running < 0 group by customer_id;
grant select on backdated_document, backdated_credit to eaveside_app;

create function require_billed_sheet() returns trigger language plpgsql as $$
declare
  counts_on date;
begin
  if new.visit_id is null then
    if new.billed_sheet_id is not null then
      raise exception 'invoice % bills a sheet without its visit', new.number using errcode = 'integrity_constraint_violation';
    end if;
    return new;
  end if;
  select d.posting_date into counts_on from visit_sheet s join document d on d.id = s.document_id
    where s.document_id = new.billed_sheet_id and s.visit_id = new.visit_id;
  if counts_on is null or new.invoice_date < counts_on then
    raise exception 'invoice % is dated before the sheet that it bills, or bills none', new.number
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger invoice_after_its_sheet before insert on invoice for each row execute function require_billed_sheet();

create function require_settlement_date() returns trigger language plpgsql as $$
begin
  if exists (select 1 from document d, invoice i
      where d.id = new.document_id and i.id = new.invoice_id and d.posting_date < i.invoice_date) then
    raise exception 'document % counts before invoice % that it settles', new.document_id, new.invoice_id
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger settlement_after_its_invoice before insert on settlement for each row execute function require_settlement_date();

-- Checked at commit, when all entries of the day are there.
create function require_credit_by_date() returns trigger language plpgsql as $$
declare
  short_on date;
begin
  if not exists (select 1 from account a where a.code = new.account_code and a.role = 'CUSTOMER_CREDIT') then
    return null;
  end if;
  select posting_date into short_on from (
    select e.posting_date, -sum(sum(e.amount)) over (order by e.posting_date) as running from money_entry e
    where e.account_code = new.account_code and e.customer_id = new.customer_id group by e.posting_date) days
  where posting_date >= new.posting_date and running < 0 order by posting_date limit 1;
  if found then
    raise exception 'document % uses credit on % that customer % does not have then', new.document_id, short_on, new.customer_id
      using errcode = 'integrity_constraint_violation';
  end if;
  return null;
end $$;
create constraint trigger credit_used_after_it_came after insert on money_entry deferrable initially deferred
  for each row when (new.needs_customer and new.amount > 0) execute function require_credit_by_date();
