-- Stored visits and scope changes begin with version 1; 0 means new, as everywhere. A draft remembers the version of the
-- visit that it was made of, and goes along.
update visit set version = version + 1;
alter table visit
  alter column version set default 1,
  add constraint visit_version check (version >= 1);
update scope_change set version = version + 1;
alter table scope_change
  alter column version set default 1,
  add constraint scope_change_version check (version >= 1);
update invoice_draft set visit_version = visit_version + 1 where visit_version is not null;
