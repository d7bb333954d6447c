-- Types of findings are edited like everything else that several people edit; of those that came with the program nobody is told.
alter table finding_type add column changed_by uuid references app_user (id), add column changed_at timestamptz;
