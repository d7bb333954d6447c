-- An extra is accepted on site, as a quote is.
alter table visit_line rename column agreed_by to accepted_by;
