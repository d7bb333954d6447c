-- Limits are entered in psi, bar, degrees Fahrenheit or Celsius as the company measures and the manual says, and kept in
-- one unit: with decimals, so that what was typed is what is shown.
alter table module_maker
  drop constraint module_maker_max_hardness_mg_per_litre_check,
  drop constraint module_maker_max_pressure_kpa_check,
  drop constraint module_maker_max_difference_celsius_check,
  alter column max_hardness_mg_per_litre type numeric(12, 6),
  alter column max_pressure_kpa type numeric(12, 6),
  alter column max_difference_celsius type numeric(12, 6),
  add constraint module_maker_hardness check (max_hardness_mg_per_litre > 0 and max_hardness_mg_per_litre <= 2000),
  add constraint module_maker_pressure check (max_pressure_kpa > 0 and max_pressure_kpa <= 50000),
  add constraint module_maker_difference check (max_difference_celsius > 0 and max_difference_celsius <= 100);
