-- Customers who may be entered twice are told by phone, email, or name and address; two that are one can be merged.

-- A phone number as it can be compared: its last ten digits without an extension, so that neither punctuation nor a
-- country or trunk prefix counts. Fewer than seven digits reach nobody and compare with nothing.
create function phone_key(given text) returns text language sql immutable strict parallel safe as $$
  select case when length(digits) >= 7 then right(digits, 10) else '' end
  from (select regexp_replace(regexp_replace(lower(given), '(x|ext).*$', ''), '[^0-9]', '', 'g') as digits) d
$$;

-- A name and address as they can be compared, whatever the capitals, accents and punctuation; empty without a street.
create function name_and_address_key(name text, street text, city text) returns text
  language sql immutable strict parallel safe as $$
  select case when btrim(street) = '' then '' else search_words(name) || '|' || search_words(street) || '|' || search_words(city) end
$$;

alter table customer
  add column phone_key text not null generated always as (phone_key(phone)) stored,
  add column email_key text not null generated always as (lower(email)) stored,
  add column name_and_address_key text not null generated always as (name_and_address_key(name, street, city)) stored,
  add column merged_into uuid references customer (id), -- documents keep the id; whoever asks for it gets the one kept
  add column merged_by uuid,
  add column merged_at timestamptz,
  add constraint customer_merged_into_another check (merged_into <> id),
  add constraint customer_merged_by_somebody check (
    (merged_into is null) = (merged_by is null) and (merged_into is null) = (merged_at is null));
create index customer_by_phone on customer (phone_key) where phone_key <> '';
create index customer_by_email on customer (email_key) where email_key <> '';
create index customer_by_name_and_address on customer (name_and_address_key) where name_and_address_key <> '';
create index customer_by_merged_into on customer (merged_into) where merged_into is not null;

-- One step from every id to the customer kept: into a merged one nothing is merged, and what was merged stays so.
create function keep_merged() returns trigger language plpgsql as $$
begin
  perform from customer where id = new.merged_into and merged_into is null for update;
  if not found then
    raise exception 'customer % can be merged only into one that is not merged itself', new.id
      using errcode = 'integrity_constraint_violation';
  end if;
  if old.merged_into is not null
      and not exists (select from customer where id = old.merged_into and merged_into = new.merged_into) then
    raise exception 'customer % stays merged', new.id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger customer_keeps_merged before update of merged_into on customer for each row
  when (new.merged_into is distinct from old.merged_into) execute function keep_merged();

-- What goes along: contacts, unapplied credit, and whoever was merged into this one before. Posted documents, sites and
-- the work on them keep the id that they bear.
create function follow_merged() returns trigger language plpgsql security definer set search_path = public as $$
begin
  update customer set merged_into = new.merged_into, merged_by = new.merged_by, merged_at = new.merged_at
    where merged_into = new.id;
  update contact set customer_id = new.merged_into where customer_id = new.id;
  insert into customer_account (customer_id, credit)
    select new.merged_into, credit from customer_account where customer_id = new.id and credit > 0
    on conflict (customer_id) do update set credit = customer_account.credit + excluded.credit;
  update customer_account set credit = 0 where customer_id = new.id and credit > 0;
  update customer set words = '' where id = new.merged_into;
  return null;
end $$;
create trigger customer_follows_merged after update of merged_into on customer for each row
  when (new.merged_into is distinct from old.merged_into) execute function follow_merged();

-- The search finds the customer kept by the words of those merged into it.
create or replace function customer_keeps_words() returns trigger language plpgsql as $$
begin
  new.words := search_words(concat_ws(' ',
    new.name, new.email, new.phone, regexp_replace(new.phone, '[^0-9]', '', 'g'), new.street, new.city, new.postal_code,
    (select string_agg(concat_ws(' ', name, email, phone, regexp_replace(phone, '[^0-9]', '', 'g')), ' ')
      from contact where customer_id = new.id),
    (select string_agg(concat_ws(' ', name, email, phone, regexp_replace(phone, '[^0-9]', '', 'g'), street, city, postal_code), ' ')
      from customer where merged_into = new.id),
    (select string_agg(concat_ws(' ', name, street, city, postal_code), ' ') from site
      where customer_id = new.id or customer_id in (select id from customer where merged_into = new.id))));
  return new;
end $$;
create or replace function tell_customer_words() returns trigger language plpgsql security definer set search_path = public as $$
begin
  update customer set words = ''
    where id in (select coalesce(merged_into, id) from customer where id = new.customer_id);
  return null;
end $$;

grant update (merged_into, merged_by, merged_at) on customer to eaveside_app;
