-- One inspection by one firm: a draft until it is submitted, then only amended by another.
create table findings (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  organization uuid not null references organization (id),
  state text not null check (state in ('draft', 'submitted')),
  inspected_on date,
  record jsonb not null,
  revision integer not null default 1,
  -- The submitted findings that these take the place of.
  amends uuid,
  created_by uuid not null references account (id),
  created_at timestamptz not null default now(),
  changed_at timestamptz not null default now(),
  submitted_by uuid references account (id),
  submitted_at timestamptz,
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id),
  foreign key (county, amends) references findings (county, id),
  unique (county, amends),
  check ((state = 'submitted') = (submitted_at is not null and submitted_by is not null))
);
create index findings_by_parcel on findings (county, parcel, id);
create index findings_by_organization on findings (county, organization, id);

create table findings_revision (
  county text not null,
  findings uuid not null,
  revision integer not null,
  record jsonb not null,
  record_hash text not null,
  recorded_by uuid not null references account (id),
  recorded_at timestamptz not null default now(),
  primary key (county, findings, revision),
  foreign key (county, findings) references findings (county, id)
);

-- Holds even where an operation forgets to look.
create function keep_submitted_findings() returns trigger language plpgsql as $$
begin
  raise exception 'submitted findings are never changed; amend them by new findings' using errcode = 'restrict_violation';
end
$$;
create trigger keep_submitted before update on findings
  for each row when (old.state = 'submitted') execute function keep_submitted_findings();

alter table findings enable row level security;
alter table findings_revision enable row level security;

create policy own on findings to asfound_service
  using (county = asking_county() and asking_role() = 'firm' and organization = asking_organization());
create policy reviewer_reads on findings for select to asfound_service
  using (county = asking_county() and asking_role() = 'reviewer' and state = 'submitted');
create policy service on findings to asfound_service
  using (county = asking_county() and asking_role() = 'service');

-- A revision is seen by whoever sees its findings: the inner query is held by the policies above.
create policy with_findings on findings_revision to asfound_service
  using (county = asking_county() and exists (
    select from findings f where f.county = findings_revision.county and f.id = findings_revision.findings));

grant select, insert, update on findings to asfound_service;
grant select, insert on findings_revision to asfound_service;
