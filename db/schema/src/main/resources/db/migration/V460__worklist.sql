-- What a visit comes to when it is billed, so that what is not billed adds up. Of visits signed off before, what was quoted counts.
alter table visit add column value_to_bill numeric(19, 3) check (value_to_bill >= 0),
  add check (value_to_bill is null or sheet_id is not null);

-- Accepted quotes that no visit carries out: kept beside them, since quotes are kept for ever and this is asked with every page.
create table quote_to_schedule (
  quote_id    uuid primary key references quote (id),
  accepted_at timestamptz not null
);
insert into quote_to_schedule
  select q.id, q.decided_at from quote q
  where q.status = 'ACCEPTED' and not exists (
    select 1 from visit v where v.quote_id = q.id and v.returns_to is null and v.status <> 'CANCELED');

create function quote_waits_for_a_visit() returns trigger language plpgsql security definer set search_path = public as $$
begin
  insert into quote_to_schedule (quote_id, accepted_at) values (new.id, new.decided_at) on conflict do nothing;
  return null;
end $$;
create trigger quote_to_schedule after update of status on quote for each row
  when (new.status = 'ACCEPTED' and old.status <> 'ACCEPTED') execute function quote_waits_for_a_visit();

create function visit_carries_out_quote() returns trigger language plpgsql security definer set search_path = public as $$
begin
  if new.status = 'CANCELED' then
    insert into quote_to_schedule (quote_id, accepted_at)
      select q.id, q.decided_at from quote q where q.id = new.quote_id and q.status = 'ACCEPTED' and not exists (
        select 1 from visit v where v.quote_id = q.id and v.returns_to is null and v.status <> 'CANCELED')
      on conflict do nothing;
  else
    delete from quote_to_schedule where quote_id = new.quote_id;
  end if;
  return null;
end $$;
create trigger visit_of_quote_scheduled after insert or update of status on visit for each row
  when (new.quote_id is not null and new.returns_to is null) execute function visit_carries_out_quote();
grant select on quote_to_schedule to eaveside_app;

create index scope_change_returns on scope_change (visit_id) where decision = 'RETURN_VISIT';

-- What somebody has put aside until a day, or for good where there is none.
create table put_aside (
  type     text not null check (type in
    ('SHEET', 'NOTE', 'DECIDE', 'BILL', 'DRAFT', 'PAST_DUE', 'ACCEPTED', 'RETURN', 'LATE', 'QUOTE', 'FINDING', 'STOCK')),
  id       uuid not null,
  place    uuid not null, -- of an item of the stock its location, of all else the id again
  until    date check (until is not null or type = 'NOTE'),
  note     text not null check (length(note) <= 500),
  put_by   uuid not null references app_user (id),
  put_at   timestamptz not null,
  primary key (type, id, place)
);
grant select, insert, update, delete on put_aside to eaveside_app;

-- Everything that is due for the company on a day, one row each, whatever module it is of. What is written here is read
-- nowhere else: the worklist, its file and the counts of the menu are all sums of these rows.
create function due_items(today date) returns table (
  type text, id uuid, place uuid, opens uuid, customer_id uuid, since date, day date, number bigint, amount numeric,
  name text, detail text, urgent boolean, held numeric, wanted numeric, unit text
) language sql stable as $$
  -- What was sent from a site, did not become the visit's job sheet, and nobody has read.
  select 'SHEET', x.id, x.id, x.visit_id, v.customer_id, (x.sent_at at time zone c.zone)::date, v.scheduled_for,
    null::bigint, null::numeric, u.name, '', x.urgent, null::numeric, null::numeric, ''
  from company c, sent_sheet x join visit v on v.id = x.visit_id join app_user u on u.id = x.sent_by
  where not exists (select 1 from sent_sheet_read r where r.sent_sheet_id = x.id)
    and not exists (select 1 from job_sheet s where s.document_id = x.sheet_id)
    and not exists (select 1 from sent_sheet l where l.sheet_id = x.sheet_id and l.sent_by = x.sent_by
      and (l.sent_at, l.id) > (x.sent_at, x.id))
  union all
  -- What a technician wrote on the job sheet of a visit that is not billed.
  select 'NOTE', v.id, v.id, v.id, v.customer_id, v.completed_on, v.completed_on,
    null, null, s.note, '', false, null, null, ''
  from visit v join job_sheet s on s.document_id = v.sheet_id where v.status = 'COMPLETED' and s.note <> ''
  union all
  select 'DECIDE', v.id, v.id, v.id, v.customer_id, v.completed_on, v.completed_on,
    count(*), v.value_to_bill, t.name, '', false, null, null, ''
  from visit v join site t on t.id = v.site_id join scope_change d on d.sheet_id = v.sheet_id
  where v.status = 'COMPLETED' and d.decision in ('OPEN', 'ASK') group by v.id, t.name
  union all
  -- Only what can be billed: nothing to decide, and on no draft, which is listed itself.
  select 'BILL', v.id, v.id, v.id, v.customer_id, v.completed_on, v.completed_on,
    q.number, coalesce(v.value_to_bill, q.total), t.name, '', false, null, null, ''
  from visit v join site t on t.id = v.site_id left join quote q on q.id = v.quote_id and v.returns_to is null
  where v.status = 'COMPLETED'
    and not exists (select 1 from scope_change d where d.sheet_id = v.sheet_id and d.decision in ('OPEN', 'ASK'))
    and not exists (select 1 from invoice_draft i where i.visit_id = v.id)
  union all
  select 'DRAFT', i.id, i.id, i.id, i.customer_id, i.service_date, i.service_date,
    null, i.gross, i.reference, '', false, null, null, '' from invoice_draft i
  union all
  select 'PAST_DUE', i.id, i.id, i.id, i.customer_id, i.due_date, i.due_date,
    i.number, i.open, i.reference, '', false, null, null, '' from invoice i where i.open > 0 and i.due_date < today
  union all
  select 'ACCEPTED', q.id, q.id, q.id, q.customer_id, (a.accepted_at at time zone c.zone)::date, q.valid_until,
    q.number, q.total, t.name, '', false, null, null, ''
  from company c, quote_to_schedule a join quote q on q.id = a.quote_id join site t on t.id = q.site_id
  union all
  -- Skipped work that is to be done on a return visit, which is not scheduled.
  select 'RETURN', v.id, v.id, v.id, v.customer_id, v.completed_on, v.completed_on,
    count(*), null, t.name, '', false, null, null, ''
  from scope_change d join visit v on v.id = d.visit_id and v.sheet_id = d.sheet_id join site t on t.id = v.site_id
  where d.decision = 'RETURN_VISIT' and not exists (
    select 1 from visit_line l join visit r on r.id = l.visit_id where l.returns_for = d.id and r.status <> 'CANCELED')
  group by v.id, t.name
  union all
  -- Visits whose day has passed without a signed job sheet.
  select 'LATE', v.id, v.id, v.id, v.customer_id, v.scheduled_for, v.scheduled_for,
    q.number, q.total, t.name, '', false, null, null, ''
  from visit v join site t on t.id = v.site_id left join quote q on q.id = v.quote_id and v.returns_to is null
  where v.status = 'SCHEDULED' and v.scheduled_for < today
  union all
  -- Drafts; and what was sent and has had no answer for a week, or runs out in three days (common practice, no source).
  select 'QUOTE', q.id, q.id, q.id, q.customer_id, q.date, q.valid_until,
    q.number, q.total, t.name, q.status, q.valid_until < today, null, null, ''
  from quote q join site t on t.id = q.site_id
  where q.status = 'DRAFT' or (q.status = 'SENT' and (q.date <= today - 7 or q.valid_until < today + 3))
  union all
  select 'FINDING', f.id, f.id, f.id, f.customer_id, (f.opened_at at time zone c.zone)::date,
    (f.opened_at at time zone c.zone)::date, null, null, k.name, s.name, s.rank = (select max(rank) from finding_severity), null, null, ''
  from company c, finding f join finding_type k on k.code = f.type_code join finding_severity s on s.code = f.severity_code
  where f.closed_at is null and f.withdrawn_at is null
  union all
  select 'STOCK', m.item_id, m.location_id, m.location_id, null, today, today,
    null, null, i.name, p.name, false, coalesce(sum(s.quantity), 0), m.quantity, i.base_unit
  from reorder_point m join stock_item i on i.id = m.item_id join location p on p.id = m.location_id
    left join lot_stock s on s.item_id = m.item_id and s.location_id = m.location_id and s.quantity > 0
  group by m.item_id, m.location_id, m.quantity, i.name, i.base_unit, p.name having coalesce(sum(s.quantity), 0) < m.quantity
$$;
