-- What was noticed on site, its photos, and what was done about it.

create table finding_kind (
  code    text primary key check (code ~ '^[A-Z][A-Z0-9_]{0,39}$'),
  name    text not null check (btrim(name) <> ''),
  trade   text not null default '', -- the licensed trade that mends it
  caution text not null default '',
  active  boolean not null default true,
  version integer not null default 0
);
create unique index finding_kind_by_name on finding_kind (lower(name));

-- Trade terms to start with; the company keeps its own list. The wording of the cautions is common practice, no source.
insert into finding_kind (code, name, trade, caution) values
  ('CRACKED_GLASS', 'Cracked glass', 'glazier',
   'Keep people away from below the glass. A cracked module may let water in and can be live: do not touch it; follow local codes and have a licensed professional look at it.'),
  ('LOOSE_CLAMP', 'Loose clamp or rail', 'electrician',
   'Loose modules can shift or fall in wind: keep clear of the area below. Follow local codes and have a licensed professional secure them.'),
  ('DAMAGED_CONDUIT', 'Damaged conduit or connector', 'electrician',
   'Parts may be live whenever there is daylight: do not touch. Follow local codes and have a licensed professional repair it.'),
  ('EXPOSED_CONDUCTOR', 'Exposed conductor', 'electrician',
   'Danger of lethal shock, also with the system switched off: keep everybody away. Follow local codes and have a licensed professional repair it without delay.'),
  ('RUST', 'Rust', '', ''),
  ('NEST', 'Nest', '', 'Nests may be protected by law: leave them alone until the local rules have been checked.'),
  ('OVERHANGING_TREE', 'Overhanging tree', 'tree surgeon',
   'Branches near power lines are dangerous: follow local codes and leave cutting to a licensed professional.'),
  ('LICHEN', 'Lichen or moss', '', ''),
  ('FAILED_SEAL', 'Failed seal', 'glazier', ''),
  ('BLOCKED_GUTTER', 'Blocked gutter', '',
   'Clearing gutters means working at height: follow local codes on fall protection.'),
  ('DAMAGED_ROOF', 'Damaged roof covering', 'roofer',
   'Do not walk on the damaged part. Follow local codes and have a licensed professional repair it.'),
  ('OTHER', 'Other', '', '');

create table finding_severity (
  code text primary key check (code ~ '^[A-Z][A-Z0-9_]{0,39}$'),
  name text not null unique check (btrim(name) <> ''),
  rank integer not null unique check (rank > 0)
);
insert into finding_severity (code, name, rank) values ('NOTE', 'Note', 1), ('SOON', 'Soon', 2), ('URGENT', 'Urgent', 3);

create table photo (
  id        uuid primary key,
  visit_id  uuid not null,
  width     integer not null check (width between 1 and 1600),
  height    integer not null check (height between 1 and 1600),
  file_hash char(64) not null, -- of the file as sent, to tell a retry from a clash
  stored_by uuid not null references app_user (id),
  stored_at timestamptz not null,
  unique (id, visit_id)
);
create index photo_by_visit on photo (visit_id, stored_at, id);

-- Picture data has a table of its own so that no list ever loads it. Already compressed: kept out of line as it is.
create table photo_image (
  photo_id uuid not null references photo (id),
  size     text not null check (size in ('FULL', 'THUMBNAIL')),
  width    integer not null check (width between 1 and 1600),
  height   integer not null check (height between 1 and 1600),
  content  bytea not null check (octet_length(content) between 1 and 8388608 and substring(content from 1 for 3) = '\xffd8ff'),
  primary key (photo_id, size),
  check (size <> 'THUMBNAIL' or (width <= 320 and height <= 320))
);
alter table photo_image alter column content set storage external;

create table finding (
  id            uuid primary key,
  kind_code     text not null references finding_kind (code),
  severity_code text not null references finding_severity (code),
  visit_id      uuid not null,
  customer_id   uuid not null references customer (id),
  site_id       uuid not null,
  surface_id    uuid references surface (id),
  note          text not null,
  customer_told boolean not null,
  opened_by     uuid not null references app_user (id),
  opened_at     timestamptz not null,
  fingerprint   char(64) not null,
  closed_at     timestamptz check (closed_at >= opened_at),
  withdrawn_at  timestamptz check (withdrawn_at >= opened_at),
  withdrawn_by  uuid references app_user (id),
  foreign key (site_id, customer_id) references site (id, customer_id),
  check ((withdrawn_at is null) = (withdrawn_by is null)),
  unique (id, visit_id)
);
create index finding_open on finding (opened_at, id) where closed_at is null and withdrawn_at is null;
create index finding_by_visit on finding (visit_id);
create index finding_by_customer on finding (customer_id, opened_at desc, id desc);

-- A finding shows photos of its own visit only.
create table finding_photo (
  finding_id uuid not null,
  photo_id   uuid not null,
  visit_id   uuid not null,
  position   integer not null check (position between 1 and 12),
  primary key (finding_id, photo_id),
  unique (finding_id, position),
  foreign key (finding_id, visit_id) references finding (id, visit_id),
  foreign key (photo_id, visit_id) references photo (id, visit_id)
);
create index finding_photo_by_photo on finding_photo (photo_id);

create table finding_answer (
  id          uuid primary key,
  finding_id  uuid not null references finding (id),
  action      text not null check (action in ('NOTICE', 'UPSELL', 'REFERRAL', 'CLOSING')),
  recipient   text not null default '', -- where a notice went, or whom a referral names
  trade       text not null default '',
  note        text not null default '',
  given_by    uuid not null references app_user (id),
  given_at    timestamptz not null,
  fingerprint char(64) not null,
  check ((recipient <> '') = (action in ('NOTICE', 'REFERRAL'))),
  check ((trade <> '') = (action = 'REFERRAL')),
  check (note <> '' or action in ('NOTICE', 'REFERRAL'))
);
create index finding_answer_by_finding on finding_answer (finding_id, given_at, id);
create unique index finding_closed_once on finding_answer (finding_id) where action = 'CLOSING';

-- The lock makes an answer wait for a closing, and a closing for an answer.
create function require_open_finding() returns trigger language plpgsql as $$
begin
  perform 1 from finding where id = new.finding_id and closed_at is null and withdrawn_at is null for share;
  if not found then
    raise exception 'finding % takes no further answer', new.finding_id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger finding_answer_while_open before insert on finding_answer for each row execute function require_open_finding();
create trigger finding_answer_append_only before update or delete on finding_answer for each row execute function refuse_change();

-- What was seen stays as it was written down; only closing and withdrawal follow, each once.
create function keep_finding() returns trigger language plpgsql as $$
begin
  if (old.closed_at is not null and new.closed_at is distinct from old.closed_at)
      or (old.withdrawn_at is not null and new.withdrawn_at is distinct from old.withdrawn_at) then
    raise exception 'finding % does not reopen', old.id using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger finding_kept before update on finding for each row execute function keep_finding();

grant select, insert, update on finding_kind to eaveside_app;
grant select on finding_severity to eaveside_app;
grant select, insert, delete on photo, photo_image to eaveside_app; -- a photo can be taken back before sign-off
grant select, insert on finding, finding_photo, finding_answer to eaveside_app;
grant update (closed_at, withdrawn_at, withdrawn_by) on finding to eaveside_app;
