-- what a closed month says was applied and spent is what its entries say
select 'month ' || to_char(p.first_day, 'YYYY-MM') as document,
  b.account_code || ': kept ' || coalesce(k.actual, 0.000) || ' spent and ' || coalesce(k.applied, 0.000)
    || ' applied, entered ' || coalesce(l.actual, 0.000) || ' and ' || coalesce(l.applied, 0.000) as detail
from period p
join (select first_day, account_code from period_variance union select first_day, account_code from ledger_variance) b
  on b.first_day = p.first_day
left join period_variance k on k.first_day = b.first_day and k.account_code = b.account_code
left join ledger_variance l on l.first_day = b.first_day and l.account_code = b.account_code
where p.closed_at is not null
  and (coalesce(k.actual, 0) <> coalesce(l.actual, 0) or coalesce(k.applied, 0) <> coalesce(l.applied, 0))
order by p.first_day limit 1
