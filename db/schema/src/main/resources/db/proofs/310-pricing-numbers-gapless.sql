-- numbers of quotes and price books are gapless
select document, detail from (
  select 'quote ' || q.number as document, case
      when q.number <> row_number() over w then 'expected number ' || row_number() over w
      when lead(q.number) over w is null and q.number <> s.last_number then 'the series counter says ' || s.last_number
    end as detail
  from quote q join pricing_series s on s.type = 'QUOTE' window w as (order by q.number)
  union all
  select 'price book ' || b.number, case
      when b.number <> row_number() over w then 'expected number ' || row_number() over w
      when lead(b.number) over w is null and b.number <> s.last_number then 'the series counter says ' || s.last_number
    end
  from price_book b join pricing_series s on s.type = 'PRICE_BOOK' where b.number is not null window w as (order by b.number)
  union all
  select lower(replace(s.type, '_', ' ')) || ' ' || s.last_number, 'the counter moved but nothing has the number'
  from pricing_series s where s.last_number > 0
    and not exists (select 1 from quote q where s.type = 'QUOTE' and q.number = s.last_number)
    and not exists (select 1 from price_book b where s.type = 'PRICE_BOOK' and b.number = s.last_number)) numbered
where detail is not null
order by document limit 1
