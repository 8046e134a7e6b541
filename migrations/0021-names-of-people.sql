-- Whether a county keeps the names of owners and installers with what is read of its papers; the record needs neither.
alter table county add column keeps_names boolean not null default false;
