-- How a permit is filed: in the file of a parcel, void, or merged into another that is the same paper. Nothing is deleted,
-- and each change can be undone by the opposite one. Null is what nearly all are: in the file.
alter table permit
  add column standing text check (standing in ('void', 'merged')),
  add column merged_into uuid check (merged_into <> id),
  add foreign key (county, merged_into) references permit (county, id),
  add constraint permit_merged_into_one check ((coalesce(standing, '') = 'merged') = (merged_into is not null));
create index permit_by_merged_into on permit (county, merged_into) where merged_into is not null;

-- Each change, with a reason of the closed list. A reviewer's own words about it stand in the event of the same id, which
-- only reviewers read.
create table filing_change (
  county text not null,
  id uuid not null,
  permit uuid not null,
  -- Of the permit, as the change left it.
  revision integer not null,
  act text not null check (act in ('move', 'void', 'restore', 'merge', 'separate')),
  reason text not null check (reason ~ '^[a-z][a-z-]{1,39}$'),
  from_parcel uuid not null,
  to_parcel uuid not null,
  -- The permit that it was merged into, or separated from.
  other uuid,
  changed_by uuid not null references account (id),
  changed_at timestamptz not null,
  primary key (county, id),
  unique (county, permit, revision),
  foreign key (county, permit) references permit (county, id),
  foreign key (county, other) references permit (county, id),
  foreign key (county, from_parcel) references parcel (county, id),
  foreign key (county, to_parcel) references parcel (county, id),
  check ((act = 'move') = (from_parcel <> to_parcel)),
  check ((act in ('merge', 'separate')) = (other is not null))
);
create index filing_change_by_parcel on filing_change (county, from_parcel, id);

alter table filing_change enable row level security;
create policy reads on filing_change for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'firm', 'service'));
create policy reviewer_adds on filing_change for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'reviewer');
grant select, insert on filing_change to asfound_service;

call watch_records('filing_change', 'id');
create trigger never_changed before update or delete on filing_change
  for each statement execute function never_changed();
