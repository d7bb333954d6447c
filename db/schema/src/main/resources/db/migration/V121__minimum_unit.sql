-- A minimum names the unit that it is counted in, so that the item's unit cannot change under it.
alter table stock_item add unique (id, base_unit);
alter table stock_minimum add column unit text;
update stock_minimum m set unit = i.base_unit from stock_item i where i.id = m.item_id;
alter table stock_minimum
  alter column unit set not null,
  add foreign key (item_id, unit) references stock_item (id, base_unit);
