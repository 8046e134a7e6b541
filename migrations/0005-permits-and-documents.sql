-- A paper as it came in. Its bytes lie in the originals, by content hash.
create table document (
  county text not null,
  id uuid not null,
  parcel uuid,
  content_hash text not null check (content_hash ~ '^[0-9a-f]{64}$'),
  media_type text not null,
  file_name text,
  bytes bigint not null,
  pages integer,
  state text not null check (state in ('received', 'reading', 'proposed', 'confirmed', 'set-aside', 'failed')),
  -- Why it was set aside or failed, in words.
  reason text,
  -- What was read from it, proposed and not yet confirmed.
  proposals jsonb not null default '[]',
  revision integer not null default 1,
  received_by uuid not null references account (id),
  received_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id)
);
create index document_by_parcel on document (county, parcel);
create index document_by_content on document (county, content_hash);
create index document_by_state on document (county, state, id);

create table document_page (
  county text not null,
  document uuid not null,
  number integer not null check (number >= 1),
  width real not null,
  height real not null,
  text text not null,
  words jsonb not null,
  primary key (county, document, number),
  foreign key (county, document) references document (county, id)
);

-- What a person made of the proposals. Never changed: a second look is a second row.
create table transcription (
  county text not null,
  id uuid not null,
  document uuid not null,
  body jsonb not null,
  confirmed_by uuid not null references account (id),
  confirmed_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, document) references document (county, id)
);
create index transcription_by_document on transcription (county, document, id);

-- The permit as it stands: what is asked by, beside the whole record of the current revision.
create table permit (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  number text,
  kind text not null check (kind in ('new', 'repair', 'alteration', 'abandonment')),
  issued_on date,
  approved_on date,
  record jsonb not null,
  revision integer not null default 1,
  created_at timestamptz not null default now(),
  changed_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id)
);
create index permit_by_parcel on permit (county, parcel, id);
create index permit_by_number on permit (county, number);

-- Every revision there ever was, never changed.
create table permit_revision (
  county text not null,
  permit uuid not null,
  revision integer not null,
  record jsonb not null,
  record_hash text not null,
  reason text,
  transcription uuid,
  recorded_by uuid not null references account (id),
  recorded_at timestamptz not null default now(),
  primary key (county, permit, revision),
  foreign key (county, permit) references permit (county, id),
  foreign key (county, transcription) references transcription (county, id)
);

alter table document enable row level security;
alter table document_page enable row level security;
alter table transcription enable row level security;
alter table permit enable row level security;
alter table permit_revision enable row level security;

create policy reviewer on document to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on document_page to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on transcription to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy firm_reads on permit for select to asfound_service
  using (county = asking_county() and asking_role() = 'firm');
create policy reviewer on permit to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy firm_reads on permit_revision for select to asfound_service
  using (county = asking_county() and asking_role() = 'firm');
create policy reviewer on permit_revision to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

grant select, insert, update on document, permit to asfound_service;
grant select, insert, update, delete on document_page to asfound_service;
grant select, insert on transcription, permit_revision to asfound_service;
