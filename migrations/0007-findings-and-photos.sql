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

-- A photo of an inspection. Its bytes lie in the originals: as it was taken, and as others get it.
create table photo (
  county text not null,
  id uuid not null,
  findings uuid not null,
  -- Its component by its name in the findings; null for one of the whole site.
  component text,
  content_hash text not null check (content_hash ~ '^[0-9a-f]{64}$'),
  media_type text not null check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
  bytes bigint not null,
  shown_hash text not null check (shown_hash ~ '^[0-9a-f]{64}$'),
  -- Made with the photo, by whatever process could bear to open it: nobody opens it again to show or print it.
  small_hash text check (small_hash ~ '^[0-9a-f]{64}$'),
  printed_hash text check (printed_hash ~ '^[0-9a-f]{64}$'),
  width integer not null,
  height integer not null,
  orientation smallint not null check (orientation between 1 and 8),
  -- By the clock of the phone or camera, ISO 8601, with its offset where it gave one.
  taken_at text,
  -- Only where whoever took it allowed it.
  lat double precision,
  lon double precision,
  radius_ft double precision,
  added_by uuid not null references account (id),
  added_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, findings) references findings (county, id),
  -- The same picture sent again is the same photo.
  unique (county, findings, content_hash),
  check ((lat is null) = (lon is null))
);

alter table photo enable row level security;

-- Seen by whoever sees its findings (the inner query is held by their policies): a firm its own, a reviewer those of
-- findings that were handed in, an agent none. Taken away only while its findings are a draft.
create policy with_findings on photo for select to asfound_service
  using (county = asking_county() and exists (
    select from findings f where f.county = photo.county and f.id = photo.findings));
create policy own on photo for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'firm' and exists (
    select from findings f where f.county = photo.county and f.id = photo.findings));
create policy own_draft on photo for delete to asfound_service
  using (county = asking_county() and asking_role() = 'firm' and exists (
    select from findings f where f.county = photo.county and f.id = photo.findings and f.state = 'draft'));

grant select, insert, delete on photo to asfound_service;
