-- the trial balance is zero
select 'trial balance' as document, 'debits exceed credits by ' || sum(amount) as detail
from money_entry having sum(amount) <> 0
