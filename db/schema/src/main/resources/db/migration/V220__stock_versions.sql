-- Version 0 means new: what is stored begins with 1, as everywhere else. Who saved a row last stands on it from now on; a row that was
-- last saved before does not know.
alter table stock_item add column changed_by uuid, add column changed_at timestamptz;
alter table location add column changed_by uuid, add column changed_at timestamptz;
alter table mix add column changed_by uuid, add column changed_at timestamptz;

update stock_item set version = version + 1;
update location set version = version + 1;
update mix set version = version + 1;

alter table stock_item add constraint stock_item_version_check check (version >= 1);
alter table location add constraint location_version_check check (version >= 1);
alter table mix add constraint mix_version_check check (version >= 1);
