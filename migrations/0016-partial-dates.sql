-- Old cards date a permit to the month or the year alone: 1977-09, 1977 (ISO 8601, reduced precision). As text they sort by
-- what is known of them.
alter table permit
  alter column issued_on type text using to_char(issued_on, 'YYYY-MM-DD'),
  alter column approved_on type text using to_char(approved_on, 'YYYY-MM-DD'),
  add constraint permit_issued_on_is_a_date check (issued_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$'),
  add constraint permit_approved_on_is_a_date check (approved_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$');
