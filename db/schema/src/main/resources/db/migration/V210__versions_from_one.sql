-- Whatever several people edit has version 0 as long as it is new, and begins with 1 once it is stored.
update company set version = version + 1;
alter table company
  alter column version set default 1,
  add constraint company_version check (version >= 1);
update app_user set version = version + 1;
alter table app_user
  alter column version set default 1,
  add constraint app_user_version check (version >= 1);
