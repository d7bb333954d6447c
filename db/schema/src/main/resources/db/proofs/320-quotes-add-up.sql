-- every quote's total is the sum of its lines, and every line's price that of its explanation
select document, detail from (
  select 'quote ' || q.number as document, 'says ' || q.total || ' but its lines add up to ' || coalesce(sum(l.net), 0) as detail,
    q.number
  from quote q left join quote_line l on l.quote_id = q.id
  group by q.id, q.number, q.total
  having q.total <> coalesce(sum(l.net), 0)
  union all
  select 'quote ' || q.number, 'line ' || (l.position + 1) || ' is priced ' || l.unit_price || ' with a top-up of ' || l.top_up
    || ', explained as ' || r.unit_price || ' with ' || r.top_up, q.number
  from quote q join quote_line l on l.quote_id = q.id
  left join lateral (
    select coalesce(sum(case when type in ('FROM_BOOK', 'SURCHARGED') then amount
                    when type = 'SHARED_VISIT' then -amount else 0 end), 0) as unit_price,
      coalesce(sum(case when type in ('TO_LINE_MINIMUM', 'TO_VISIT_MINIMUM') then amount else 0 end), 0) as top_up
    from quote_line_reason where quote_line_id = l.id) r on true
  where l.unit_price <> r.unit_price or l.top_up <> r.top_up) wrong
order by number limit 1
