-- Parcels to be reconciled again, all of them or those that an import touched. Worked off by any number of processes:
-- each takes some that are still waiting, and whatever it takes is waiting again when it dies.
create table rerun (
  county text not null references county (id),
  id uuid not null,
  cause text not null check (cause in ('rules-changed', 'engine-changed', 'imported', 'asked-for')),
  state text not null check (state in ('gathering', 'running', 'paused', 'done')),
  revision integer not null default 1,
  asked_by uuid references account (id),
  asked_at timestamptz not null,
  ended_at timestamptz,
  primary key (county, id)
);

create table rerun_parcel (
  county text not null,
  rerun uuid not null,
  parcel uuid not null,
  -- Null while it waits. `unaffected`: nothing it rests on has changed; `same`: reconciled anew, with no difference more
  -- or less; `failed`: with the reason in `says`, and the parcel left as it was.
  outcome text check (outcome in ('unaffected', 'same', 'changed', 'failed')),
  says text,
  primary key (county, rerun, parcel),
  foreign key (county, rerun) references rerun (county, id),
  foreign key (county, parcel) references parcel (county, id)
);
create index rerun_parcel_waiting on rerun_parcel (county, rerun, parcel) where outcome is null;

-- Which column of a file means what, as a person left it: the next file with the same headings begins with it.
create table import_mapping (
  county text not null references county (id),
  kind text not null check (kind in ('permits', 'parcels', 'findings')),
  -- The headings as they are compared: in order, without case and signs.
  headings text not null,
  body jsonb not null,
  mended_by uuid not null references account (id),
  mended_at timestamptz not null,
  primary key (county, kind, headings)
);

-- A file of many records. Its bytes lie in the originals, by content hash.
create table import (
  county text not null references county (id),
  id uuid not null,
  kind text not null check (kind in ('permits', 'parcels', 'findings')),
  format text not null check (format in ('csv', 'ndjson')),
  content_hash text not null check (content_hash ~ '^[0-9a-f]{64}$'),
  bytes bigint not null,
  file_name text,
  -- Headings, the first rows, and how a CSV is separated.
  head jsonb not null,
  mapping jsonb not null,
  state text not null check (state in ('waiting', 'trying', 'tried', 'running', 'done', 'failed')),
  reason text,
  job uuid,
  rerun uuid,
  -- How far it is: what lies before that line is done and is not done again.
  rows_read bigint not null default 0,
  read_to_line bigint not null default 0,
  added bigint not null default 0,
  changed bigint not null default 0,
  unchanged bigint not null default 0,
  rejected bigint not null default 0,
  revision integer not null default 1,
  made_by uuid not null references account (id),
  made_at timestamptz not null,
  ended_at timestamptz,
  primary key (county, id),
  foreign key (county, rerun) references rerun (county, id)
);

-- A row that was not taken, whole, with everything that is wrong with it.
create table import_rejection (
  county text not null,
  import uuid not null,
  line bigint not null,
  cells jsonb not null,
  faults jsonb not null,
  primary key (county, import, line),
  foreign key (county, import) references import (county, id)
);

alter table rerun enable row level security;
alter table rerun_parcel enable row level security;
alter table import_mapping enable row level security;
alter table import enable row level security;
alter table import_rejection enable row level security;

create policy reviewer on rerun to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on rerun_parcel to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on import_mapping to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on import to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on import_rejection to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

grant select, insert, update on rerun, rerun_parcel, import_mapping, import to asfound_service;
grant select, insert, delete on import_rejection to asfound_service;
