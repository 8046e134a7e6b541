-- Whether a county keeps the names of owners and installers with what is read of its papers; the record needs neither.
alter table county add column keeps_names boolean not null default false;

-- The record of a county has another shape now, and the same meaning: the audit says so.
select restate_records('county');
