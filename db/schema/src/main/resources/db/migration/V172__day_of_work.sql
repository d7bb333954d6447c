-- The day of a visit's work lies near the day that was planned: a slip of month or year is refused. Only a day that is set now is
-- looked at, so that visits of the past stay as they are.
create function require_day_near_plan() returns trigger language plpgsql as $$
begin
  if abs(new.done_on - new.planned_for) > 14 then
    raise exception 'visit %: % is far from the day that was planned, %', new.id, new.done_on, new.planned_for
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger visit_done_near_plan before update on visit for each row
  when (new.done_on is not null and new.done_on is distinct from old.done_on) execute function require_day_near_plan();
create trigger visit_new_near_plan before insert on visit for each row
  when (new.done_on is not null) execute function require_day_near_plan();
