-- A password that somebody else has given to a user is good for one thing: to choose one's own.
alter table app_user add column password_given boolean not null default false;
grant update (password_given) on app_user to eaveside_app;
