-- Every column of a customer may be written, also one that comes later. What it is known by stays as it was entered.
create function keep_id() returns trigger language plpgsql as $$
begin
  raise exception '% % keeps its id', tg_table_name, old.id using errcode = 'integrity_constraint_violation';
end $$;
create trigger customer_keeps_id before update of id on customer for each row
  when (new.id is distinct from old.id) execute function keep_id();
grant update on customer to eaveside_app;
