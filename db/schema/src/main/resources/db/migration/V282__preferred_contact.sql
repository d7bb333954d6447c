alter table customer add column preferred_contact text check (preferred_contact in ('CALL', 'TEXT', 'EMAIL'));
