-- Browsers that a user has signed in with before: guesses made elsewhere never make them wait.
create table known_browser (
  user_id uuid not null references app_user (id),
  hash    char(64) not null check (hash ~ '^[0-9a-f]{64}$'), -- SHA-256 of the secret in its cookie, which is not kept
  used_at timestamptz not null, -- when its user signed in there last
  primary key (user_id, hash)
);
create index known_browser_by_hash on known_browser (hash);
grant select, insert, delete on known_browser to eaveside_app;
grant update (used_at) on known_browser to eaveside_app;

alter table sign_in_failure drop constraint sign_in_failure_type_check;
alter table sign_in_failure add constraint sign_in_failure_type_check check (type in ('ADDRESS', 'USERNAME', 'BROWSER'));
