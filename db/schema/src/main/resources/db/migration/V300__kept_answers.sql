-- What a request that did something was answered with: the same request again gets the same answer, whatever has changed since.
create table kept_answer (
  user_id     uuid not null references app_user (id),
  request     char(64) not null check (request ~ '^[0-9a-f]{64}$'), -- SHA-256 of the method, address, sender's role and body
  status      integer not null check (status between 200 and 399),
  location    text check (location <> ''), -- where the browser goes on, or what was made
  body        text, -- JSON
  answered_at timestamptz not null,
  primary key (user_id, request)
);
create trigger kept_answer_append_only before update or delete on kept_answer for each row execute function refuse_change();
create trigger kept_answer_no_truncate before truncate on kept_answer execute function refuse_change();
grant select, insert on kept_answer to eaveside_app;
