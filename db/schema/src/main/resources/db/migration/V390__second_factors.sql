-- What a user shows beside the password: a passkey, or the code of an authenticator app.
create table passkey (
  id            uuid primary key,
  user_id       uuid not null references app_user (id),
  label         text not null check (btrim(label) <> '' and length(label) <= 100),
  host          text not null check (length(host) between 1 and 255), -- that it was made for: it is good for no other
  credential_id bytea not null unique check (length(credential_id) between 1 and 1023),
  public_key    bytea not null, -- COSE
  sign_count    bigint not null check (sign_count >= 0),
  added_at      timestamptz not null,
  used_at       timestamptz
);
create index passkey_by_user on passkey (user_id, added_at, id);

create table authenticator_app (
  user_id      uuid primary key references app_user (id),
  secret       text not null check (secret ~ '^[A-Z2-7]{32}$'), -- 160 bits in base 32
  confirmed_at timestamptz, -- counts from when a code of it was entered
  last_step    bigint not null default 0 -- of the code that was taken last: none is taken twice
);

-- A question that a passkey is to answer, once and within minutes.
create table passkey_question (
  hash     char(64) primary key check (hash ~ '^[0-9a-f]{64}$'), -- SHA-256 of what the browser names it by
  user_id  uuid references app_user (id), -- null where the passkey will tell
  question text not null,
  asked_at timestamptz not null
);
create index passkey_question_by_age on passkey_question (asked_at);

alter table user_session add column second_at timestamptz; -- when something beside the password was shown

alter table sign_in_failure drop constraint sign_in_failure_type_check;
alter table sign_in_failure add constraint sign_in_failure_type_check check (type in ('ADDRESS', 'USERNAME', 'BROWSER', 'CODE'));

grant select, insert, delete on passkey, authenticator_app, passkey_question to eaveside_app;
grant update (sign_count, used_at) on passkey to eaveside_app;
grant update (asked_at) on passkey_question to eaveside_app; -- to lock a row: it is never changed
grant update (secret, confirmed_at, last_step) on authenticator_app to eaveside_app;
