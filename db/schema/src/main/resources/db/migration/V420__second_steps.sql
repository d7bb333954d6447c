-- In some of the known browsers the second step was shown as well: codes that are guessed elsewhere never make those wait.
alter table known_browser add column second_step boolean not null default false;
grant update (second_step) on known_browser to eaveside_app;
