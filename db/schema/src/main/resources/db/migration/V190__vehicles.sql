-- Vehicles, as the office keeps them.
create table vehicle (
  id            uuid primary key,
  name          text not null unique check (btrim(name) <> ''),
  license_plate text not null default '',
  note          text not null default '',
  active        boolean not null,
  version       integer not null,
  changed_by    uuid not null,
  changed_at    timestamptz not null
);
grant select, insert, update on vehicle to eaveside_app;
