-- A customer with two sites and their surfaces, what is sold, cost rates, an office worker and a technician: what quotes
-- are written from. The two sign in with the owner's password, whose hash is copied.
insert into app_user (id, username, name, role, password_hash)
select '01900000-0000-7000-8000-000000000001', 'quotes.office', 'Quote Office', 'OFFICE', password_hash from app_user where role = 'OWNER' limit 1;
insert into app_user (id, username, name, role, password_hash)
select '01900000-0000-7000-8000-000000000002', 'quotes.technician', 'Quote Technician', 'TECHNICIAN', password_hash from app_user where role = 'OWNER' limit 1;

insert into customer (id, name, type, street, city, region, zip_code, country, email, phone, payment_term_days, note, active, version, changed_by, changed_at)
values ('01900000-0000-7000-8000-000000000010', 'Alder Lane Clinic', 'BUSINESS', '12 Alder Lane', 'Larkford', 'IL', '60999', 'US', 'desk@alderlane.example.com', '555-0110', 30, '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000011', 'Moss & Daughters', 'HOUSEHOLD', '3 Quarry Road', 'Larkford', 'IL', '60999', 'US', '', '555-0111', 14, '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into site (id, customer_id, name, street, city, region, zip_code, country, access_notes, hazards, water_on_site, active, version, changed_by, changed_at)
values ('01900000-0000-7000-8000-000000000020', '01900000-0000-7000-8000-000000000010', 'Main building', '12 Alder Lane', 'Larkford', 'IL', '60999', 'US', 'Gate code at the desk', 'Steep north roof', true, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000021', '01900000-0000-7000-8000-000000000010', 'Annex', '14 Alder Lane', 'Larkford', 'IL', '60999', 'US', '', '', true, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000022', '01900000-0000-7000-8000-000000000011', 'House', '3 Quarry Road', 'Larkford', 'IL', '60999', 'US', '', '', true, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into surface (id, site_id, type, name, extent, unit, row_count, panel_manufacturer, active, version, changed_by, changed_at)
values ('01900000-0000-7000-8000-000000000030', '01900000-0000-7000-8000-000000000020', 'ARRAY', 'South array', 48, 'H87', 2, null, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000031', '01900000-0000-7000-8000-000000000020', 'SKYLIGHT', 'Hall skylights', 6, 'H87', 0, null, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000032', '01900000-0000-7000-8000-000000000020', 'WINDOW', 'Street front', 22, 'H87', 0, null, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000033', '01900000-0000-7000-8000-000000000020', 'ROOF', 'North roof', 1900, 'FTK', 0, null, true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into surface_attribute (surface_id, type, attribute, value)
values ('01900000-0000-7000-8000-000000000030', 'ARRAY', 'STORY', 2),
       ('01900000-0000-7000-8000-000000000030', 'ARRAY', 'PITCH_DEGREES', 30),
       ('01900000-0000-7000-8000-000000000032', 'WINDOW', 'SCREENS', 1),
       ('01900000-0000-7000-8000-000000000033', 'ROOF', 'GROWTH_GRADE', 3);

insert into service_line (id, code, name, active, version, changed_by, changed_at)
values ('01900000-0000-7000-8000-000000000040', 'Q-SOLAR', 'Solar arrays', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000041', 'Q-GLASS', 'Windows and skylights', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000042', 'Q-ROOF', 'Roofs', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into tax_code (code) values ('Q-STANDARD');
insert into tax_setting (code, valid_from, entry, category, rate, exemption_reason, set_by, set_at)
values ('Q-STANDARD', '2026-01-01', 1, 'S', 8.25, '', '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into service_item (id, service_line_id, code, name, unit, minutes_per_unit, tax_code, surface_type, cautions, active, version, changed_by, changed_at)
values ('01900000-0000-7000-8000-000000000050', '01900000-0000-7000-8000-000000000040', 'Q-PANEL', 'Wash panels', 'H87', 1.5, 'Q-STANDARD', 'ARRAY', '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000051', '01900000-0000-7000-8000-000000000041', 'Q-SKYLIGHT', 'Clean skylights', 'H87', 8, 'Q-STANDARD', 'SKYLIGHT', '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000052', '01900000-0000-7000-8000-000000000041', 'Q-PANE', 'Clean window panes', 'H87', 4, 'Q-STANDARD', 'WINDOW', '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'),
       ('01900000-0000-7000-8000-000000000053', '01900000-0000-7000-8000-000000000042', 'Q-SOFT-WASH', 'Soft-wash the roof', 'FTK', 0.08, 'Q-STANDARD', 'ROOF', '', true, 1, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z');
insert into cost_rates (valid_from, entry, labor_per_hour, travel_amount, travel_base, travel_unit, overhead_per_hour, set_by, set_at)
select '2026-01-01', 1, 32, 0.70, 1, 'SMI', 14, '01900000-0000-7000-8000-000000000001', '2026-01-05T15:00:00Z'
where not exists (select from cost_rates);

insert into finding (id, type_code, severity_code, visit_id, customer_id, site_id, surface_id, note, customer_notified, opened_by, opened_at, fingerprint)
values ('01900000-0000-7000-8000-000000000060', 'LICHEN', 'SOON', '01900000-0000-7000-8000-000000000061', '01900000-0000-7000-8000-000000000010', '01900000-0000-7000-8000-000000000020', '01900000-0000-7000-8000-000000000033', 'Thick along the north eaves', true, '01900000-0000-7000-8000-000000000002', '2026-11-02T16:00:00Z', repeat('0', 64));
