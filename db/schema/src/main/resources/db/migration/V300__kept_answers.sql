-- What a request that did something was answered with: where the same request is sent again and can only be refused, since its thing
-- has been changed meanwhile, it gets that answer. The database's owner may delete old ones.
create table kept_answer (
  user_id     uuid not null references app_user (id),
  request     char(64) not null check (request ~ '^[0-9a-f]{64}$'), -- SHA-256 of the method, address, sender's role and body
  status      integer not null check (status between 200 and 399),
  location    text check (location ~ '^/'), -- where the browser goes on, or what was made
  body        text, -- JSON
  answered_at timestamptz not null, -- when it last did something
  primary key (user_id, request)
);
grant select, insert, update on kept_answer to eaveside_app;
