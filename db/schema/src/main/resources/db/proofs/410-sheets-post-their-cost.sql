-- every job sheet posted the cost that it shows, and every visit stands on a sheet that was not reversed
select document, detail from (
  select d.type || ' ' || d.number as document, d.posted_at,
    'posted ' || coalesce(p.amount, 0) || ' to work in progress, its parts add up to ' || coalesce(c.amount, 0) as detail
  from job_sheet s join document d on d.id = s.document_id
  left join lateral (
    select sum(e.amount) as amount from money_entry e join account a on a.code = e.account_code
    where e.document_id = d.id and a.role = 'WORK_IN_PROGRESS') p on true
  left join lateral (select sum(amount) as amount from job_sheet_cost where sheet_id = d.id) c on true
  where coalesce(p.amount, 0) <> coalesce(c.amount, 0)
  union all
  select d.type || ' ' || d.number, d.posted_at, 'was reversed, yet visit ' || v.id || ' stands on it'
  from visit v join document d on d.id = v.sheet_id join document r on r.reverses = d.id
  union all
  select d.type || ' ' || d.number, d.posted_at, 'was not reversed, yet visit ' || s.visit_id || ' does not stand on it'
  from job_sheet s join document d on d.id = s.document_id join visit v on v.id = s.visit_id
  where v.sheet_id is distinct from d.id and not exists (select 1 from document r where r.reverses = d.id)
  union all
  select d.type || ' ' || d.number, d.posted_at, 'has no sheet'
  from document d where d.type = 'JOB_SHEET' and not exists (select 1 from job_sheet s where s.document_id = d.id)
) broken
order by posted_at limit 1
