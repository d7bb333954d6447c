-- Stored drafts begin with version 1; 0 means new, as everywhere.
update invoice_draft set version = 1 where version = 0;
alter table invoice_draft alter column version drop default;
alter table invoice_draft add check (version >= 1);

-- Ids of drafts that were discarded: discarding again is answered like the first time, and a late first sending does not
-- bring a draft back.
create table discarded_draft (
  id           uuid primary key,
  discarded_by uuid not null,
  discarded_at timestamptz not null
);
grant select, insert on discarded_draft to eaveside_app;
