-- numbers are gapless per series and follow their dates
select type || ' ' || number as document, detail from (
  select d.type, d.number, case
      when d.number <> row_number() over w then 'expected number ' || row_number() over w
      when d.posting_date < lag(d.posting_date) over w then 'dated before the number in front of it'
      when lead(d.number) over w is null and d.number <> s.last_number then 'the series counter says ' || s.last_number
    end as detail
  from document d join number_series s on s.type = d.type
  window w as (partition by d.type order by d.number)) numbered
where detail is not null
union all
select s.type || ' ' || s.last_number, 'the counter moved but no document has the number'
from number_series s where s.last_number > 0 and not exists (select 1 from document d where d.type = s.type)
order by 1 limit 1
