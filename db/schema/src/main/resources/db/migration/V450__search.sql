-- One search finds sites and contacts by themselves too, not only the customer whose words have theirs in them.
alter table site add column words text not null generated always as
  (search_words(name || ' ' || street || ' ' || city || ' ' || zip_code)) stored;
create index site_by_words on site using gin (words gin_trgm_ops) with (fastupdate = off);

alter table contact add column words text not null generated always as
  (search_words(name || ' ' || email || ' ' || phone || ' ' || regexp_replace(phone, '[^0-9]', '', 'g'))) stored;
create index contact_by_words on contact using gin (words gin_trgm_ops) with (fastupdate = off);

-- A check's number, a customer's order number, a lot's label are found by their beginnings.
create index payment_by_reference on payment (lower(reference) text_pattern_ops) where reference <> '';
create index invoice_by_reference on invoice (lower(reference) text_pattern_ops) where reference <> '';
create index lot_by_label on lot (lower(label) text_pattern_ops) where label <> '' and not withdrawn;
