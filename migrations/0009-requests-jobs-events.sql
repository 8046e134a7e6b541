-- The first answer to a request that must not be done twice, kept in the transaction that did it.
create table idempotency_key (
  county text not null,
  account uuid not null references account (id),
  key text not null,
  request_hash text not null,
  status smallint not null,
  headers jsonb not null,
  body text not null,
  answered_at timestamptz not null default now(),
  primary key (county, account, key)
);
create index idempotency_key_by_age on idempotency_key (answered_at);

-- Long work as the person who asked for it sees it; the queue itself is kept elsewhere.
create table job (
  county text not null,
  id uuid not null,
  kind text not null,
  organization uuid references organization (id),
  requested_by uuid references account (id),
  state text not null check (state in ('waiting', 'running', 'done', 'failed')),
  done bigint not null default 0,
  total bigint,
  says text,
  result jsonb,
  requested_at timestamptz not null default now(),
  changed_at timestamptz not null default now(),
  primary key (county, id)
);
create index job_by_age on job (county, requested_at, id);
create index job_not_done on job (county, state, requested_at) where state <> 'done';

-- What happened to which record, by whom; only ever added to.
create table event (
  county text not null,
  id uuid not null,
  kind text not null,
  subject_kind text not null,
  subject uuid not null,
  parcel uuid,
  account uuid references account (id),
  organization uuid references organization (id),
  role text not null,
  before_hash text,
  after_hash text,
  body jsonb not null default '{}',
  happened_at timestamptz not null default now(),
  primary key (county, id)
);
create index event_by_subject on event (county, subject, id);
create index event_by_parcel on event (county, parcel, id);

alter table idempotency_key enable row level security;
alter table job enable row level security;
alter table event enable row level security;

create policy own on idempotency_key to asfound_service
  using (county = asking_county() and account = asking_account());
create policy own on job to asfound_service
  using (county = asking_county() and asking_role() in ('firm', 'agent') and organization = asking_organization());
create policy reviewer on job to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy added on event for insert to asfound_service with check (county = asking_county());
create policy reviewer_reads on event for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

grant select, insert on idempotency_key, event to asfound_service;
grant select, insert, update on job to asfound_service;
