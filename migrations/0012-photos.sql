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
