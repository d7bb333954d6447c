-- What an import was answered with, so that the same file again is answered alike. What came in before knows only its counts.
alter table customer_import add column unchanged integer not null default 0 check (unchanged >= 0);
create table customer_import_alike (
  fingerprint char(64) not null references customer_import (fingerprint),
  position    integer not null check (position >= 0),
  line        bigint not null check (line >= 1), -- of the file, with the header as the first
  name        text not null,
  other_name  text not null,
  other       uuid references customer (id),
  other_line  bigint check (other_line >= 1),
  because     text not null check (because ~ '^(PHONE|EMAIL|NAME_AND_ADDRESS)(,(PHONE|EMAIL|NAME_AND_ADDRESS))*$'),
  primary key (fingerprint, position),
  check ((other is null) <> (other_line is null))
);
grant select, insert on customer_import_alike to eaveside_app;
