-- The answer for a parcel from one as-built, one set of findings and one state of the rules. Never changed.
create table reconciliation (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  findings uuid,
  -- The firm whose findings these are.
  organization uuid references organization (id),
  as_built_on date not null,
  -- Hashes and versions of everything it was computed from, and their common hash.
  inputs jsonb not null,
  input_hash text not null,
  engine text not null,
  result jsonb not null,
  result_hash text not null,
  -- What brought it about, as findings-submitted, permit-entered, rules-changed.
  occasion text not null,
  made_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id),
  foreign key (county, findings) references findings (county, id)
);
create index reconciliation_by_parcel on reconciliation (county, parcel, id desc);
create index reconciliation_by_findings on reconciliation (county, findings);

-- A difference as it stands now: projected from the newest reconciliation, one row for a question about a thing.
create table discrepancy (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  kind text not null,
  -- The component or value it is about, stable from one reconciliation to the next.
  subject text not null,
  organization uuid references organization (id),
  severity text not null check (severity in ('action', 'review', 'note')),
  severity_rank smallint not null
    generated always as (case severity when 'action' then 1 when 'review' then 2 else 3 end) stored,
  state text not null check (state in ('open', 'decided', 'ground-moved', 'vanished')),
  evidence_hash text not null,
  reconciliation uuid not null,
  body jsonb not null,
  -- What it comes to in words, for exports; written with the row and never read back.
  says text not null,
  -- The decision in force, if one was made.
  decision uuid,
  raised_at timestamptz not null,
  changed_at timestamptz not null,
  revision integer not null default 1,
  primary key (county, id),
  unique (county, parcel, kind, subject),
  foreign key (county, parcel) references parcel (county, id),
  foreign key (county, reconciliation) references reconciliation (county, id)
);
-- The queue, worst first then oldest first; each page starts where the last one ended, at the same cost.
-- The queue of what changed since a day is read off the index alone, with whose it is: what did not change, or may not be
-- seen, is passed over without a look at its row.
create index discrepancy_queue on discrepancy (county, state, severity_rank, raised_at, id) include (changed_at, organization);
create index discrepancy_queue_of_kind on discrepancy (county, kind, state, severity_rank, raised_at, id)
  include (changed_at, organization);
create index discrepancy_queue_of_firm on discrepancy (county, organization, severity_rank, raised_at, id);
create index discrepancy_since on discrepancy (county, changed_at, id);

create table discrepancy_change (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  discrepancy uuid not null,
  reconciliation uuid not null,
  change text not null check (change in ('appeared', 'changed', 'vanished', 'returned')),
  before_hash text,
  after_hash text,
  body jsonb not null default '{}',
  noticed_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, discrepancy) references discrepancy (county, id),
  foreign key (county, reconciliation) references reconciliation (county, id)
);
create index discrepancy_change_by_reconciliation on discrepancy_change (county, reconciliation, id);
create index discrepancy_change_by_discrepancy on discrepancy_change (county, discrepancy, id);

-- What a reviewer did about a discrepancy: never changed, only superseded, and by one decision only.
create table decision (
  county text not null,
  id uuid not null,
  discrepancy uuid not null,
  parcel uuid not null,
  action text not null,
  reason text not null check (btrim(reason) <> ''),
  -- The evidence it rests on; when the discrepancy's own hash moves away, so has its ground.
  evidence_hash text not null,
  body jsonb not null default '{}',
  supersedes uuid,
  decided_by uuid not null references account (id),
  decided_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, discrepancy) references discrepancy (county, id),
  foreign key (county, supersedes) references decision (county, id),
  unique (county, supersedes)
);
create unique index decision_first on decision (county, discrepancy) where supersedes is null;
create index decision_by_discrepancy on decision (county, discrepancy, id);

alter table reconciliation enable row level security;
alter table discrepancy enable row level security;
alter table discrepancy_change enable row level security;
alter table decision enable row level security;

create policy reviewer_reads on reconciliation for select to asfound_service
  using (county = asking_county() and (asking_role() = 'reviewer'
    or (asking_role() = 'firm' and organization = asking_organization())));
create policy service on reconciliation to asfound_service
  using (county = asking_county() and asking_role() = 'service');

create policy own_reads on discrepancy for select to asfound_service
  using (county = asking_county() and asking_role() = 'firm' and organization = asking_organization());
create policy reviewer on discrepancy to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

create policy with_discrepancy on discrepancy_change for select to asfound_service
  using (county = asking_county() and exists (
    select from discrepancy d where d.county = discrepancy_change.county and d.id = discrepancy_change.discrepancy));
create policy service on discrepancy_change to asfound_service
  using (county = asking_county() and asking_role() = 'service');

create policy with_discrepancy on decision for select to asfound_service
  using (county = asking_county() and exists (
    select from discrepancy d where d.county = decision.county and d.id = decision.discrepancy));
create policy reviewer on decision for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'reviewer');

grant select, insert on reconciliation, discrepancy_change, decision to asfound_service;
grant select, insert, update on discrepancy to asfound_service;

-- The whole text of the rules that a reconciliation rests on, kept once for each state of them, so that it can be
-- redone years after the rules have moved on. Law, so the same for every county and open to read.
create table rule_book (
  hash text primary key check (hash ~ '^[0-9a-f]{64}$'),
  -- Canonical JSON (RFC 8785); as text, because the hash is of the text.
  packs text not null,
  first_used_at timestamptz not null default now()
);

alter table rule_book enable row level security;
create policy anyone_reads on rule_book for select to asfound_service using (true);
create policy service on rule_book for insert to asfound_service with check (asking_role() = 'service');
grant select, insert on rule_book to asfound_service;
