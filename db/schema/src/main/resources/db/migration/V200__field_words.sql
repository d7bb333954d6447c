-- One word for one thing, in the field's own terms: the tables, columns and codes are renamed to what pages, papers and scripts
-- call them. Names inside functions, checks, indexes and triggers follow; no figure and no id changes.

alter table account rename column kind to type;
alter table account rename column cost_kind to cost_type;
alter table app_user rename column login to username;
alter table company rename column postal_code to zip_code;
alter table cost_rates rename column labour_per_hour to labor_per_hour;
alter table customer rename column kind to type;
alter table customer rename column postal_code to zip_code;
alter table document rename column kind to type;
alter table finding rename column kind_code to type_code;
alter table finding rename column customer_told to customer_notified;
alter table finding_answer rename column action to type;
alter table invoice rename column postal_code to zip_code;
alter table invoice rename column credit_note_id to credit_memo_id;
alter table invoice_adjustment rename column kind to type;
alter table invoice_draft_adjustment rename column kind to type;
alter table invoice_draft_line rename column goodwill to no_charge;
alter table invoice_line rename column goodwill to no_charge;
alter table lot rename column item_kind to item_type;
alter table lot_stock rename column place_id to location_id;
alter table mix rename column concentrate_kind to concentrate_type;
alter table module_maker rename column max_hardness_mg_per_litre to max_hardness_mg_per_liter;
alter table money_entry rename column cost_kind to cost_type;
alter table number_series rename column kind to type;
alter table offering rename column surface_kind to surface_type;
alter table offering_consumable rename column offering_id to service_item_id;
alter table offering_price rename column offering_id to service_item_id;
alter table place rename column kind to type;
alter table place_technician rename column place_id to location_id;
alter table place_technician rename column place_kind to location_type;
alter table pricing_series rename column kind to type;
alter table quantity_step rename column offering_id to service_item_id;
alter table quote rename column made_on to drafted_on;
alter table quote rename column made_fingerprint to draft_fingerprint;
alter table quote_line rename column offering_id to service_item_id;
alter table quote_line_reason rename column kind to type;
alter table scope_difference rename column kind to type;
alter table sign_in_failure rename column kind to type;
alter table site rename column postal_code to zip_code;
alter table stock_date_exception rename column place_id to location_id;
alter table stock_entry rename column place_id to location_id;
alter table stock_item rename column kind to type;
alter table stock_minimum rename column place_id to location_id;
alter view stock_movement rename column document_kind to document_type;
alter view stock_movement rename column place_id to location_id;
alter view stock_movement rename column place_name to location_name;
alter table surcharge rename column offering_id to service_item_id;
alter table surface rename column kind to type;
alter table surface rename column module_maker to panel_manufacturer;
alter table surface_attribute rename column kind to type;
alter table visit rename column planned_for to scheduled_for;
alter table visit rename column booked_by to scheduled_by;
alter table visit rename column booked_at to scheduled_at;
alter table visit rename column done_on to completed_on;
alter table visit_change rename column kind to type;
alter table visit_line rename column offering_id to service_item_id;
alter table visit_line rename column comes_back_for to returns_for;
alter table visit_sheet rename column done_on to completed_on;
alter table visit_sheet rename column place_id to location_id;
alter table visit_sheet_cost rename column cost_kind to cost_type;
alter table visit_sheet_reading rename column feed_ppm to tap_water_ppm;
alter table visit_sheet_reading rename column product_ppm to pure_water_ppm;
alter table visit_sheet_warning rename column module_maker to panel_manufacturer;
alter table finding_answer rename to finding_action;
alter table finding_kind rename to finding_type;
alter table module_maker rename to panel_manufacturer;
alter table offering rename to service_item;
alter table offering_consumable rename to service_item_consumable;
alter table offering_price rename to service_item_price;
alter table place rename to location;
alter table place_technician rename to location_technician;
alter table scope_difference rename to scope_change;
alter table stock_minimum rename to reorder_point;
alter table visit_sheet rename to job_sheet;
alter table visit_sheet_cost rename to job_sheet_cost;
alter table visit_sheet_count rename to job_sheet_count;
alter table visit_sheet_line rename to job_sheet_line;
alter table visit_sheet_overrun rename to job_sheet_overrun;
alter table visit_sheet_reading rename to job_sheet_reading;
alter table visit_sheet_skip rename to job_sheet_skip;
alter table visit_sheet_use rename to job_sheet_use;
alter table visit_sheet_warning rename to job_sheet_warning;

-- Functions name tables, columns and codes in their text.
create temporary table renamed (old text primary key, new text not null) on commit drop;
insert into renamed values
  ('booked_at', 'scheduled_at'), ('booked_by', 'scheduled_by'), ('comes_back_for', 'returns_for'),
  ('concentrate_kind', 'concentrate_type'), ('cost_kind', 'cost_type'), ('credit_note_id', 'credit_memo_id'),
  ('customer_told', 'customer_notified'), ('document_kind', 'document_type'), ('done_on', 'completed_on'),
  ('feed_ppm', 'tap_water_ppm'), ('finding_answer', 'finding_action'), ('finding_kind', 'finding_type'),
  ('goodwill', 'no_charge'), ('item_kind', 'item_type'), ('kind', 'type'), ('kind_code', 'type_code'),
  ('labour_per_hour', 'labor_per_hour'), ('login', 'username'), ('made_fingerprint', 'draft_fingerprint'),
  ('made_on', 'drafted_on'), ('max_hardness_mg_per_litre', 'max_hardness_mg_per_liter'),
  ('module_maker', 'panel_manufacturer'), ('offering', 'service_item'), ('offering_consumable', 'service_item_consumable'),
  ('offering_id', 'service_item_id'), ('offering_price', 'service_item_price'), ('place', 'location'),
  ('place_id', 'location_id'), ('place_kind', 'location_type'), ('place_name', 'location_name'),
  ('place_technician', 'location_technician'), ('planned_for', 'scheduled_for'), ('postal_code', 'zip_code'),
  ('product_ppm', 'pure_water_ppm'), ('scope_difference', 'scope_change'), ('stock_minimum', 'reorder_point'),
  ('surface_kind', 'surface_type'), ('visit_sheet', 'job_sheet'), ('visit_sheet_cost', 'job_sheet_cost'),
  ('visit_sheet_count', 'job_sheet_count'), ('visit_sheet_line', 'job_sheet_line'),
  ('visit_sheet_overrun', 'job_sheet_overrun'), ('visit_sheet_reading', 'job_sheet_reading'),
  ('visit_sheet_skip', 'job_sheet_skip'), ('visit_sheet_use', 'job_sheet_use'), ('visit_sheet_warning', 'job_sheet_warning'),
  ('VISIT_SHEET', 'JOB_SHEET'), ('CREDIT_NOTE', 'CREDIT_MEMO'), ('CREDIT_MATCH', 'CREDIT_APPLICATION'), ('SCRAP', 'WRITE_OFF'), ('COST', 'EXPENSE'),
  ('LABOUR', 'LABOR'), ('LABOUR_APPLIED', 'LABOR_APPLIED'), ('GOODS_NOT_BILLED', 'GOODS_NOT_INVOICED'), ('SCRAPPED_STOCK', 'WRITE_OFFS'),
  ('GOODWILL_GIVEN', 'NO_CHARGE_GIVEN'), ('GOODWILL_CONTRA', 'NO_CHARGE_CONTRA'), ('PLANNED', 'SCHEDULED'), ('DONE', 'COMPLETED'),
  ('CANCELLED', 'CANCELED'), ('MOVED', 'RESCHEDULED'), ('OFFERED', 'SENT'), ('AGREED', 'ACCEPTED'), ('GIVE', 'NO_CHARGE'),
  ('COME_BACK', 'RETURN_VISIT'), ('LEAVE', 'CANCEL'), ('STOREY', 'STORY'), ('LOGIN', 'USERNAME');

create function pg_temp.in_new_words(said text) returns text language plpgsql as $$
declare
  r record;
begin
  for r in select old, new from renamed order by length(old) desc loop
    said := regexp_replace(said, '\m' || r.old || '\M', r.new, 'g');
  end loop;
  return said;
end $$;

do $$
declare
  f record;
begin
  for f in select pg_get_functiondef(p.oid) as said from pg_proc p
           where p.pronamespace = 'public'::regnamespace and p.prokind = 'f' loop
    if pg_temp.in_new_words(f.said) <> f.said then
      execute pg_temp.in_new_words(f.said);
    end if;
  end loop;
end $$;

-- Checks and indexes that name a code, taken off while the codes change and put back in the new words; so are the checks that do not
-- hold for rows from before them. The outcome of a deed on the audit log is another thing: it is done or refused.
create temporary table in_codes on commit drop as
  select format('alter table %s drop constraint %I', c.conrelid::regclass, c.conname) as taken_off,
         format('alter table %s add constraint %I %s', c.conrelid::regclass, c.conname, pg_temp.in_new_words(pg_get_constraintdef(c.oid)))
           as put_back
  from pg_constraint c
  where c.connamespace = 'public'::regnamespace and c.contype = 'c' and c.conrelid <> 'audit_event'::regclass
    and (not c.convalidated or pg_temp.in_new_words(pg_get_constraintdef(c.oid)) <> pg_get_constraintdef(c.oid))
  union all
  select format('drop index %s', i.indexrelid::regclass), pg_temp.in_new_words(pg_get_indexdef(i.indexrelid))
  from pg_index i join pg_class c on c.oid = i.indexrelid
  where c.relnamespace = 'public'::regnamespace and i.indpred is not null
    and pg_temp.in_new_words(pg_get_expr(i.indpred, i.indrelid)) <> pg_get_expr(i.indpred, i.indrelid)
  union all
  -- A document's type is that of its series of numbers.
  select format('alter table %s drop constraint %I', c.conrelid::regclass, c.conname),
         format('alter table %s add constraint %I %s', c.conrelid::regclass, c.conname, pg_get_constraintdef(c.oid))
  from pg_constraint c
  where c.contype = 'f' and c.confrelid = 'number_series'::regclass;

do $$
declare
  step record;
  coded record;
begin
  for step in select taken_off from in_codes loop
    execute step.taken_off;
  end loop;
  -- Posted rows do not change; the word for what they are does, this once.
  for coded in select * from (values
      ('number_series', 'type'), ('document', 'type'), ('account', 'role'), ('account', 'cost_type'), ('money_entry', 'cost_type'),
      ('job_sheet_cost', 'cost_type'), ('visit', 'status'), ('visit_change', 'type'), ('scope_change', 'decision'), ('quote', 'status'),
      ('surface_attribute', 'attribute'), ('surcharge', 'attribute'), ('quote_line_reason', 'attribute'), ('sign_in_failure', 'type'))
      c(relation, attribute) loop
    execute format('alter table %I disable trigger user', coded.relation);
    execute format('update %I t set %I = r.new from renamed r where r.old = t.%I', coded.relation, coded.attribute, coded.attribute);
    execute format('alter table %I enable trigger user', coded.relation);
  end loop;
  for step in select put_back from in_codes loop
    execute step.put_back;
  end loop;
end $$;

do $$
begin
  execute 'create or replace view ledger_variance as ' || pg_temp.in_new_words(pg_get_viewdef('ledger_variance'::regclass));
end $$;

-- Forms that the phone sent and that did not become a sheet keep their fields, under the names of today.
alter table sent_sheet_field disable trigger user;
update sent_sheet_field set name = regexp_replace(regexp_replace(name, '^(reading-\d+)-feed$', '\1-tapWater'), '^(reading-\d+)-product$', '\1-pureWater')
  where name ~ '^reading-\d+-(feed|product)$';
alter table sent_sheet_field enable trigger user;

-- Accounts that nobody named otherwise.
update account set name = r.new
from (values ('Goods received, not yet billed', 'Goods received, not invoiced'), ('Scrapped stock', 'Stock write-offs'),
  ('Labour applied', 'Labor applied'), ('Labour variance', 'Labor variance'), ('Goodwill given', 'No-charge work'),
  ('Goodwill given, contra', 'No-charge work, contra')) r(old, new)
where account.name = r.old;

-- The names of constraints, indexes and triggers, which refusals and reports of faults are read by.
do $$
declare
  thing record;
begin
  create temporary table fragments (place int generated always as identity, old text, new text) on commit drop;
  insert into fragments (old, new) values
    ('visit_sheet', 'job_sheet'), ('scope_difference', 'scope_change'), ('module_maker', 'panel_manufacturer'), ('maker', 'manufacturer'),
    ('offering', 'service_item'), ('place', 'location'), ('kind', 'type'), ('labour', 'labor'), ('postal_code', 'zip_code'),
    ('credit_note', 'credit_memo'), ('goodwill', 'no_charge'), ('finding_answer', 'finding_action'), ('stock_minimum', 'reorder_point'),
    ('planned_for', 'scheduled_for'), ('visit_planned', 'visit_scheduled'), ('booked', 'scheduled'), ('done_on', 'completed_on'),
    ('comes_back_for', 'returns_for'), ('login', 'username'), ('feed_ppm', 'tap_water_ppm'), ('product_ppm', 'pure_water_ppm'),
    ('customer_told', 'customer_notified'), ('made_on', 'drafted_on');
  create function pg_temp.new_name(said text) returns text language plpgsql as $f$
  declare
    r record;
  begin
    for r in select old, new from fragments order by place loop
      said := regexp_replace(said, '(^|_)' || r.old || '(?=_|$)', '\1' || r.new, 'g');
    end loop;
    return said;
  end $f$;
  for thing in
      select format('alter table %s rename constraint %I to %I', conrelid::regclass, conname, pg_temp.new_name(conname)) as renaming
      from pg_constraint
      where connamespace = 'public'::regnamespace and conrelid <> 0 and pg_temp.new_name(conname) <> conname and conparentid = 0
      union all
      select format('alter trigger %I on %s rename to %I', tgname, tgrelid::regclass, pg_temp.new_name(tgname))
      from pg_trigger
      where not tgisinternal and pg_temp.new_name(tgname) <> tgname loop
    execute thing.renaming;
  end loop;
  for thing in
      select format('alter index %s rename to %I', c.oid::regclass, pg_temp.new_name(c.relname)) as renaming
      from pg_class c
      where c.relnamespace = 'public'::regnamespace and c.relkind = 'i' and pg_temp.new_name(c.relname) <> c.relname loop
    execute thing.renaming;
  end loop;
end $$;
