-- every canister that a sheet found better than the books is in its entries as on the sheet, by a reading of pure water
with came as (
  select e.document_id as sheet_id, e.lot_id, sum(e.quantity) as quantity, sum(e.value) as value
  from stock_entry e join job_sheet s on s.document_id = e.document_id
  where e.quantity > 0 group by e.document_id, e.lot_id
), said as (
  select sheet_id, lot_id, sum(quantity) as quantity from job_sheet_overrun group by sheet_id, lot_id
)
select d.type || ' ' || d.number as document,
  'brought ' || coalesce(c.quantity, 0) || ' worth ' || coalesce(c.value, 0) || ' into a canister, the sheet says ' || coalesce(o.quantity, 0)
    as detail
from came c full join said o using (sheet_id, lot_id) join document d on d.id = sheet_id
where coalesce(c.quantity, 0) <> coalesce(o.quantity, 0) or coalesce(c.value, 0) <> 0
  or not exists (select 1 from job_sheet_reading r where r.sheet_id = d.id and r.lot_id = o.lot_id and r.pure_water_ppm <= 10)
order by d.posted_at limit 1
