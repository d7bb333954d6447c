-- What takes a document back is not dated before it: neither by the day that it counts on nor by the day it is about.
create function require_reversal_after() returns trigger language plpgsql as $$
declare
  posted date;
begin
  select d.posting_date into posted from document d where d.id = new.reverses;
  if least(new.posting_date, new.service_date) < posted then
    raise exception '% number % is dated before the document that it reverses, of %', new.kind, new.number, posted
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger document_after_reversed before insert on document
  for each row when (new.reverses is not null) execute function require_reversal_after();
