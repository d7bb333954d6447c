-- What is kept added up has room for far more entries than books ever hold: a sum that no column takes would refuse every
-- payment or close after it.
alter table customer_account alter column credit type numeric(28, 3);
alter table period_variance alter column actual type numeric(28, 3);
alter table period_variance alter column applied type numeric(28, 3);
alter table lot_stock alter column value type numeric(28, 3);
