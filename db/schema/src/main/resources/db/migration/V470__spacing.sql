-- How a user wants pages to look; who has no row has them compact.
create table user_preference (
  user_id     uuid primary key references app_user (id),
  comfortable boolean not null
);
grant select, insert, update on user_preference to eaveside_app;
