-- Whoever asks is told apart, so that nobody can have any number of questions kept.
delete from passkey_question; -- each is good for five minutes
alter table passkey_question add column asker char(64) not null check (asker ~ '^[0-9a-f]{64}$'); -- SHA-256 of a user or a network
create index passkey_question_by_asker on passkey_question (asker, asked_at);
