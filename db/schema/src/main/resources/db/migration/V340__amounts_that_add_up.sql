-- An entry is far below where sums of amounts end, so that books that hold it can always be added up. Entries of before are left as
-- they are: what was posted never changes.
alter table money_entry add constraint money_entry_can_be_added_up check (abs(amount) < 1000000000000) not valid;
