-- The setting up of an app belongs to the session that gave the password for it, and ends by itself. What was begun before nobody knows
-- of any more.
delete from authenticator_app where confirmed_at is null;
alter table authenticator_app
  add column begun_at timestamptz,
  add column begun_in uuid references user_session (id) on delete set null,
  add check (confirmed_at is not null or begun_at is not null);
grant update (begun_at, begun_in) on authenticator_app to eaveside_app;
