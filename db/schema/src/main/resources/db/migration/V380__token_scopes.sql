-- What a script may do with a token. Those issued before could do whatever their user may.
alter table api_token add column scope text not null default 'ADMINISTER' check (scope in ('READ', 'WRITE', 'ADMINISTER'));
alter table api_token alter column scope drop default;
