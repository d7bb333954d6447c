-- A van of the quotes' technician with nothing in it yet, and what it can carry.
insert into stock_item (id, code, name, type, base_unit, alkaline, active, version)
values ('01900000-0000-7000-8000-000000000101', 'V-SOAP', 'Van soap', 'CONCENTRATE', 'OZA', false, true, 1),
       ('01900000-0000-7000-8000-000000000102', 'V-RESIN', 'Van canister', 'RESIN', 'GRN', false, true, 1),
       ('01900000-0000-7000-8000-000000000103', 'V-RUBBER', 'Squeegee rubber', 'PLAIN', 'FOT', false, true, 1);
insert into mix (id, name, concentrate_id, parts, meaning, active, version)
values ('01900000-0000-7000-8000-000000000104', 'Van mix', '01900000-0000-7000-8000-000000000101', 31, 'ADDED_TO_WATER', true, 1);
insert into location (id, name, type, active, version)
values ('01900000-0000-7000-8000-000000000105', 'Test van', 'VAN', true, 1);
insert into location_technician (user_id, location_id)
values ('01900000-0000-7000-8000-000000000002', '01900000-0000-7000-8000-000000000105');
