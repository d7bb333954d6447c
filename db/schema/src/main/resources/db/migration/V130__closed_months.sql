-- A month's close and the documents posted into the month exclude each other: a document holds a share lock on the
-- month's row, which the close's update conflicts with (a key-share lock did not). Which came first is told by one
-- counter that both draw from while they hold the lock: clocks and transaction ids are taken before it, and two
-- transactions may commit in the other order.
create sequence posting_order;
grant usage on sequence posting_order to eaveside_app;

-- Drawn by trigger. Documents and closes from before the counter have none, and are held to their clock times instead.
alter table document add column posting_order bigint;
alter table document add constraint document_has_order check (posting_order is not null) not valid;
alter table period add column close_order bigint;
alter table period add constraint period_order_with_close check (close_order is null or closed_at is not null);

create or replace function require_open_period() returns trigger language plpgsql as $$
begin
  perform 1 from period where first_day = date_trunc('month', new.posting_date)::date and closed_at is null for share;
  if not found then
    raise exception 'the period of % is not open', new.posting_date using errcode = 'integrity_constraint_violation';
  end if;
  new.posting_order := nextval('posting_order');
  if new.number > 1 and not exists (select 1 from document d
      where d.kind = new.kind and d.number = new.number - 1 and d.posting_date <= new.posting_date) then
    raise exception '% number % leaves a gap, or is dated before the last of its series', new.kind, new.number
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;

-- Months close one after the other and stay closed. The row is locked before this runs, so that the close has waited
-- for every document in flight when it draws its place in the order.
create function keep_period() returns trigger language plpgsql as $$
begin
  if tg_op = 'INSERT' then
    if new.closed_at is not null then
      raise exception 'the month % begins open', new.first_day using errcode = 'integrity_constraint_violation';
    end if;
    return new;
  end if;
  if old.closed_at is not null then
    raise exception 'the month % is closed for good', old.first_day using errcode = 'integrity_constraint_violation';
  end if;
  if new.first_day <> old.first_day then
    raise exception 'a month stays the month that it is' using errcode = 'integrity_constraint_violation';
  end if;
  if new.closed_at is not null then
    if exists (select 1 from company where books_from < new.first_day) and not exists (select 1 from period
        where first_day = new.first_day - interval '1 month' and closed_at is not null) then
      raise exception 'the month % cannot be closed: the one before it is open', new.first_day
        using errcode = 'integrity_constraint_violation';
    end if;
    new.close_order := nextval('posting_order');
  end if;
  return new;
end $$;
create trigger period_keeps before insert or update on period for each row execute function keep_period();
create trigger period_stays before delete on period for each row execute function refuse_change();
create trigger period_no_truncate before truncate on period execute function refuse_change();
