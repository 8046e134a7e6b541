-- A system is a thing of its own: the parcels that it serves, and those that it lies on. A parcel of which nothing is said
-- has just one, made by itself: it bears the parcel's id and has no row here. So what is asked by a system's id is
-- answered for every parcel, and only what is out of the ordinary takes space.
create table system (
  county text not null,
  id uuid not null,
  -- In whose file its papers and inspections lie. A parcel's own system has the parcel's id.
  parcel uuid not null,
  -- What it serves, from a closed list: all that an agent or owner reads of it.
  use text not null check (use ~ '^[a-z][a-z-]{1,39}$'),
  -- As the county calls it; for whoever works with the file.
  label text check (label = btrim(label) and length(label) between 1 and 60),
  revision integer not null default 1,
  created_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id)
);
create index system_by_parcel on system (county, parcel);

-- A system with none of these is none any more: its papers went elsewhere, or it never was.
create table system_parcel (
  county text not null,
  system uuid not null,
  parcel uuid not null,
  serves boolean not null,
  lies_on boolean not null,
  -- What it serves there, where the county knows it otherwise than by a permit in that parcel's file.
  bedrooms smallint check (bedrooms between 0 and 50),
  design_flow_gpd integer check (design_flow_gpd between 1 and 1000000),
  primary key (county, system, parcel),
  foreign key (county, system) references system (county, id),
  foreign key (county, parcel) references parcel (county, id),
  check (serves or lies_on),
  check (serves or (bedrooms is null and design_flow_gpd is null))
);
create index system_parcel_by_parcel on system_parcel (county, parcel);

-- Each revision as it was and will stay, with its reason.
create table system_change (
  county text not null,
  system uuid not null,
  revision integer not null,
  body jsonb not null,
  reason text not null check (btrim(reason) <> ''),
  changed_by uuid not null references account (id),
  changed_at timestamptz not null,
  primary key (county, system, revision),
  foreign key (county, system) references system (county, id)
);

alter table system enable row level security;
alter table system_parcel enable row level security;
alter table system_change enable row level security;

create policy reads on system for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'firm', 'service'));
create policy reviewer on system to asfound_service
  using (county = asking_county() and asking_role() = 'reviewer');
create policy reads on system_parcel for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'firm', 'service'));
create policy reviewer on system_parcel to asfound_service
  using (county = asking_county() and asking_role() = 'reviewer');
create policy reviewer_reads on system_change for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer_adds on system_change for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'reviewer');

grant select, insert, update on system to asfound_service;
grant select, insert, delete on system_parcel to asfound_service;
grant select, insert on system_change to asfound_service;

-- Papers, inspections, answers, differences and decisions belong to a system: the one that was said, else the parcel's own.
alter table permit
  add column of_system uuid,
  add column system uuid not null generated always as (coalesce(of_system, parcel)) stored,
  add foreign key (county, of_system) references system (county, id);
alter table findings
  add column of_system uuid,
  add column system uuid not null generated always as (coalesce(of_system, parcel)) stored,
  add foreign key (county, of_system) references system (county, id);
alter table reconciliation
  add column of_system uuid,
  add column system uuid not null generated always as (coalesce(of_system, parcel)) stored,
  add foreign key (county, of_system) references system (county, id);
alter table discrepancy
  add column of_system uuid,
  add column system uuid not null generated always as (coalesce(of_system, parcel)) stored,
  add foreign key (county, of_system) references system (county, id),
  drop constraint discrepancy_county_parcel_kind_subject_key,
  add unique (county, system, kind, subject);
alter table decision
  add column of_system uuid,
  add column system uuid not null generated always as (coalesce(of_system, parcel)) stored,
  add foreign key (county, of_system) references system (county, id);

create index permit_by_system on permit (county, system, id);
create index discrepancy_by_parcel on discrepancy (county, parcel);
create index findings_by_system on findings (county, system, id);
drop index reconciliation_by_parcel;
create index reconciliation_by_system on reconciliation (county, system, id desc);
create index decision_by_system on decision (county, system, id);

select restate_records(of_table) from unnest(array['permit', 'findings', 'reconciliation', 'discrepancy', 'decision']::regclass[])
  as shape (of_table);

call watch_records('system', 'id');
call watch_records('system_parcel', 'system,parcel');
call watch_records('system_change', 'system,revision');
create trigger never_changed before update or delete on system_change
  for each statement execute function never_changed();
