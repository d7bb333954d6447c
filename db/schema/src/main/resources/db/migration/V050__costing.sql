-- The owner's dated cost rates. Never changed: one that is not yet in force is set again by a further entry for the same day.

create table cost_rates (
  valid_from        date not null,
  entry             integer not null check (entry >= 1),
  labour_per_hour   numeric(19, 3) not null check (labour_per_hour >= 0),
  travel_amount     numeric(19, 10) not null check (travel_amount >= 0),
  travel_base       numeric(19, 6) not null check (travel_base > 0),
  travel_unit       text not null check (travel_unit in ('SMI', 'KMT', 'MTR', 'FOT')),
  overhead_per_hour numeric(19, 3) not null check (overhead_per_hour >= 0),
  set_by            uuid not null,
  set_at            timestamptz not null,
  primary key (valid_from, entry)
);
create trigger cost_rates_append_only before update or delete on cost_rates for each row execute function refuse_change();
create trigger cost_rates_no_truncate before truncate on cost_rates execute function refuse_change();

grant select, insert on cost_rates to eaveside_app;
