-- Who may come in, and who did what. The trail is append-only by grant and by trigger.

create table app_user (
  id            uuid primary key,
  login         text not null unique check (login ~ '^[a-z0-9][a-z0-9._@-]{1,63}$'),
  name          text not null check (btrim(name) <> '' and length(name) <= 100),
  role          text not null check (role in ('OWNER', 'OFFICE', 'TECHNICIAN')),
  active        boolean not null default true,
  password_hash text not null check (password_hash like '$argon2id$v=%$m=%,t=%,p=%$%$%'), -- with its cost
  credentials   integer not null default 1 check (credentials > 0), -- counts passwords: older sessions have ended
  version       integer not null default 0
);

-- Checked at commit; the use cases lock all owners first, so that two cannot deactivate each other at once.
create function require_owner() returns trigger language plpgsql as $$
begin
  if not exists (select 1 from app_user where role = 'OWNER' and active) then
    raise exception 'the last active owner must stay' using errcode = 'integrity_constraint_violation';
  end if;
  return null;
end $$;
create constraint trigger app_user_keeps_owner after update or delete on app_user deferrable initially deferred
  for each row when (old.role = 'OWNER' and old.active) execute function require_owner();

create table api_token (
  id         uuid primary key,
  user_id    uuid not null references app_user (id),
  label      text not null check (btrim(label) <> '' and length(label) <= 100),
  hash       char(64) not null unique check (hash ~ '^[0-9a-f]{64}$'), -- SHA-256 of the token, which is not kept
  issued_at  timestamptz not null,
  issued_by  uuid references app_user (id), -- null from the command line
  expires_at timestamptz not null,
  revoked_at timestamptz,
  revoked_by uuid references app_user (id), -- null from the command line
  check (expires_at > issued_at and expires_at <= issued_at + interval '8784 hours'), -- 366 days, whatever the clocks do
  check (revoked_by is null or revoked_at is not null)
);
create index api_token_by_user on api_token (user_id, issued_at desc, id desc);
create function keep_revoked() returns trigger language plpgsql as $$
begin
  raise exception 'a revoked token stays revoked' using errcode = 'integrity_constraint_violation';
end $$;
create trigger api_token_stays_revoked before update on api_token for each row
  when (old.revoked_at is not null and (new.revoked_at, new.revoked_by) is distinct from (old.revoked_at, old.revoked_by))
  execute function keep_revoked();

-- Stored, so that a restart does not forgive.
create table sign_in_failure (
  kind       text not null check (kind in ('ADDRESS', 'LOGIN')),
  subject    char(64) not null check (subject ~ '^[0-9a-f]{64}$'), -- SHA-256 of the address or the login as typed
  failures   integer not null check (failures >= 0),
  last_at    timestamptz not null,
  wait_until timestamptz not null,
  primary key (kind, subject)
);
create index sign_in_failure_by_age on sign_in_failure (last_at);

create table audit_event (
  id      uuid primary key,
  at      timestamptz not null,
  action  text not null check (action ~ '^[a-z][a-z0-9.-]{0,59}$'),
  outcome text not null check (outcome in ('DONE', 'REFUSED')),
  user_id uuid references app_user (id), -- null for nobody signed in, and for the command line
  subject text not null check (length(subject) <= 200),
  detail  text not null check (length(detail) <= 1000),
  address text not null check (length(address) <= 100)
);
create index audit_event_by_time on audit_event (at desc, id desc);
create index audit_event_by_user on audit_event (user_id, at desc, id desc);
create trigger audit_event_append_only before update or delete on audit_event
  for each row execute function refuse_change();
create trigger audit_event_no_truncate before truncate on audit_event execute function refuse_change();

grant select, insert on app_user, api_token, audit_event to eaveside_app;
grant update (name, role, active, password_hash, credentials, version) on app_user to eaveside_app;
grant update (revoked_at, revoked_by) on api_token to eaveside_app;
grant select, insert, update, delete on sign_in_failure to eaveside_app;
