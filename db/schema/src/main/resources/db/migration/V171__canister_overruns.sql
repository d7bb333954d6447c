-- Rated capacity exceeded: what the books had estimated too low of a canister whose reading showed pure water. The sheet's own
-- stock entries bring it in at no cost before they draw; a proof holds the two together.
create table visit_sheet_overrun (
  sheet_id uuid not null references visit_sheet (document_id),
  position integer not null check (position >= 0),
  item_id  uuid not null,
  lot_id   uuid not null,
  quantity numeric(18, 6) not null check (quantity > 0),
  unit     text not null,
  primary key (sheet_id, position),
  foreign key (lot_id, item_id) references lot (id, item_id)
);
create trigger visit_sheet_overrun_with_document before insert on visit_sheet_overrun for each row execute function require_sheet_unposted();
create trigger visit_sheet_overrun_append_only before update or delete on visit_sheet_overrun for each row execute function refuse_change();
grant select, insert on visit_sheet_overrun to eaveside_app;
