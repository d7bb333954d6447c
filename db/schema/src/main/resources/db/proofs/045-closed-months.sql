-- no document of a closed month was posted after its close
select d.type || ' ' || d.number as document,
  'posted after the close of ' || to_char(p.first_day, 'YYYY-MM') as detail
from document d join period p on p.first_day = date_trunc('month', d.posting_date)::date
where p.closed_at is not null
  and (d.posting_order > p.close_order
    or (d.posting_order is not null and p.close_order is null) -- closed before the order was kept
    or (d.posting_order is null and p.close_order is null and d.posted_at > p.closed_at))
order by d.posted_at limit 1
