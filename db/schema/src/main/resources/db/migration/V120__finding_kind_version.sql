-- Version 0 means "new", as everywhere else: what is stored begins with 1, so that entering a code anew never writes over
-- the kind that already bears it.
alter table finding_kind alter column version set default 1;
update finding_kind set version = version + 1;
