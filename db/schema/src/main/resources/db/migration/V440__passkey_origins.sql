-- A passkey is good where it was made, port included: at another port of the same host somebody else may ask for it.
alter table passkey add column origin text not null default '' check (length(origin) <= 300);
update passkey set origin = 'https://' || host; -- the proxy's; others are made anew
alter table passkey alter column origin drop default;
