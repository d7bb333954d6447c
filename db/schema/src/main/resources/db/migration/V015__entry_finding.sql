-- Which finding the work came from, on the revenue of the quote that it led to; and the series of documents that match
-- a customer's credit with an invoice (or take it back), where no money moves.
alter table money_entry add column finding_id uuid;

insert into number_series (kind) values ('CREDIT_MATCH');
