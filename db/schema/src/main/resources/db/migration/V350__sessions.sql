-- What a browser that has signed in is let in by: a secret in its cookie, of which only the digest is kept. A session that has ended
-- stays for a while, so that its user can see what was theirs.
create table user_session (
  id          uuid primary key,
  user_id     uuid not null references app_user (id),
  hash        char(64) not null unique check (hash ~ '^[0-9a-f]{64}$'), -- SHA-256 of the secret, which is not kept
  credentials integer not null check (credentials > 0), -- of the user when it began: an older one has ended
  began_at    timestamptz not null,
  seen_at     timestamptz not null,
  ended_at    timestamptz,
  address     text not null check (length(address) <= 100),
  agent       text not null check (length(agent) <= 300), -- as the browser calls itself
  check (seen_at >= began_at)
);
create index user_session_by_user on user_session (user_id, began_at desc, id desc);
create index user_session_by_age on user_session (seen_at);
create trigger user_session_stays_ended before update on user_session for each row
  when (old.ended_at is not null and new.ended_at is distinct from old.ended_at) execute function keep_revoked();

grant select, insert, delete on user_session to eaveside_app;
grant update (credentials, seen_at, ended_at) on user_session to eaveside_app;
