-- What was already wrong with the audit when a backup that says so was restored, for as long as there is this database.
create table audit_break (
  number bigint generated always as identity primary key,
  noted_at timestamptz not null default now(),
  says text not null
);
alter table audit_break enable row level security;
create trigger never_changed before update or delete on audit_break
  for each statement execute function never_changed();
create trigger never_emptied before truncate on audit_break
  for each statement execute function never_emptied();
