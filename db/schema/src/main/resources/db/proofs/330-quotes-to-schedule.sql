-- an accepted quote is to be scheduled if and only if no visit but canceled ones and returns carries it out
select 'quote ' || number as document, detail from (
  select q.number, 'is accepted, no visit carries it out, and it is not listed as to be scheduled' as detail from quote q
  where q.status = 'ACCEPTED'
    and not exists (select 1 from visit v where v.quote_id = q.id and v.returns_to is null and v.status <> 'CANCELED')
    and not exists (select 1 from quote_to_schedule w where w.quote_id = q.id)
  union all
  select q.number, 'is listed as to be scheduled, but is not accepted or a visit carries it out'
  from quote_to_schedule w join quote q on q.id = w.quote_id
  where q.status <> 'ACCEPTED'
    or exists (select 1 from visit v where v.quote_id = q.id and v.returns_to is null and v.status <> 'CANCELED')
) wrong order by number limit 1
