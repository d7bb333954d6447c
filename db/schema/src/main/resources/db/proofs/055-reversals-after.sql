-- no reversal or credit memo is dated before the document that it reverses
select d.type || ' ' || d.number as document,
  'dated ' || least(d.posting_date, d.service_date) || ', before ' || o.type || ' ' || o.number || ' of '
    || o.posting_date as detail
from document d join document o on o.id = d.reverses
where least(d.posting_date, d.service_date) < o.posting_date
order by d.posted_at limit 1
