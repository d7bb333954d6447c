-- Credit is held to its day for merged customers as for one: what came in under the one id may be used under the other.
create or replace function require_credit_by_date() returns trigger language plpgsql as $$
declare
  short_on date;
begin
  if not exists (select 1 from account a where a.code = new.account_code and a.role = 'CUSTOMER_CREDIT') then
    return null;
  end if;
  select posting_date into short_on from (
    select e.posting_date, -sum(sum(e.amount)) over (order by e.posting_date) as running from money_entry e
    where e.account_code = new.account_code and e.customer_id in (
      select one.id from customer one, customer this where this.id = new.customer_id
        and coalesce(one.merged_into, one.id) = coalesce(this.merged_into, this.id))
    group by e.posting_date) days
  where posting_date >= new.posting_date and running < 0 order by posting_date limit 1;
  if found then
    raise exception 'document % uses credit on % that customer % does not have then', new.document_id, short_on, new.customer_id
      using errcode = 'integrity_constraint_violation';
  end if;
  return null;
end $$;
