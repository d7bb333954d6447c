-- The day that a quote bears is its date, as on every other document.
alter table quote rename column drafted_on to date;

-- A quote answers a finding that exists. Not validated, since accepted and declined quotes never change and an earlier
-- version took any id: whatever such a quote says stays, and every quote from now on is held to it.
alter table quote add constraint quote_came_from_finding foreign key (came_from) references finding (id) not valid;
