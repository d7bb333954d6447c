-- What the owner opens to the office beyond its role: reading the books. Closed until the owner says otherwise.
create table office_rights (
  id          smallint primary key default 1 check (id = 1),
  reads_books boolean not null,
  set_by      uuid references app_user (id), -- null until somebody sets it
  set_at      timestamptz,
  check ((set_by is null) = (set_at is null))
);
insert into office_rights (reads_books) values (false);
grant select on office_rights to eaveside_app;
grant update (reads_books, set_by, set_at) on office_rights to eaveside_app;
