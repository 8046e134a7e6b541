-- Public halves of the keys that letters were ever signed with. The private ones never come here.
create table signing_key (
  kid text primary key check (kid ~ '^[A-Za-z0-9_-]{43}$'),
  public_jwk jsonb not null,
  first_used_at timestamptz not null default now(),
  -- Signs no more. Stays published, so that what it signed can be checked.
  retired_at timestamptz
);

-- The last number given to a letter in a county and year; one transaction at a time takes the next, so that none is
-- given twice and none is left out.
create table letter_counter (
  county text not null references county (id),
  year integer not null,
  last integer not null check (last >= 1),
  primary key (county, year)
);

-- A letter as it went out. Never changed: what happens to it later stands beside it.
create table letter (
  county text not null references county (id),
  id uuid not null,
  parcel uuid not null,
  kind text not null check (kind in ('status', 'report', 'brief')),
  number text not null,
  -- Whoever holds it may check the letter; nobody finds one by trying.
  code text not null check (code ~ '^[0-9A-Z]{4}(-[0-9A-Z]{4}){3}$'),
  -- To whom it was given.
  organization uuid not null references organization (id),
  issued_by uuid not null references account (id),
  issued_on date not null,
  as_of date not null,
  word text not null,
  reconciliation uuid,
  -- All that is printed on it, so that the same bytes can be printed again.
  content jsonb not null,
  -- What it rests on, to be compared with what stands when it is checked.
  facts jsonb not null,
  pdf_sha256 text not null check (pdf_sha256 ~ '^[0-9a-f]{64}$'),
  pdf_bytes integer not null,
  pages integer not null,
  -- JWS in compact form, over the statement.
  signature text not null,
  signing_key text not null references signing_key (kid),
  issued_at timestamptz not null,
  primary key (county, id),
  unique (county, number),
  foreign key (county, parcel) references parcel (county, id),
  foreign key (county, reconciliation) references reconciliation (county, id)
);
create index letter_by_parcel on letter (county, parcel, kind, issued_at desc, id desc);
-- Whoever asks by a code knows no county.
create unique index letter_by_code on letter (code);

create table letter_withdrawal (
  county text not null,
  letter uuid not null,
  -- Shown to everyone who checks the letter.
  reason text not null check (btrim(reason) <> ''),
  withdrawn_by uuid not null references account (id),
  withdrawn_at timestamptz not null,
  primary key (county, letter),
  foreign key (county, letter) references letter (county, id)
);

alter table signing_key enable row level security;
alter table letter_counter enable row level security;
alter table letter enable row level security;
alter table letter_withdrawal enable row level security;

create policy anyone_reads on signing_key for select to asfound_service using (true);
create policy service on letter_counter to asfound_service
  using (county = asking_county() and asking_role() = 'service');
create policy own on letter to asfound_service
  using (county = asking_county() and asking_role() in ('firm', 'agent') and organization = asking_organization());
create policy reviewer on letter to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy with_letter on letter_withdrawal for select to asfound_service
  using (county = asking_county() and exists (
    select from letter l where l.county = letter_withdrawal.county and l.id = letter_withdrawal.letter));
create policy reviewer on letter_withdrawal for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'reviewer');

grant select on signing_key to asfound_service;
grant select, insert, update on letter_counter to asfound_service;
grant select, insert on letter, letter_withdrawal to asfound_service;

-- The two questions that are asked before a county is known: whose code is this, and where does a letter belong. They
-- tell a name that stands in every address of the county, and nothing of the letter.
create function letter_with_code(asked text) returns table (county text, letter uuid)
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select l.county, l.id from letter l where l.code = asked
$$;
create function county_of_letter(asked uuid) returns text
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select l.county from letter l where l.id = asked
$$;
revoke all on function letter_with_code(text), county_of_letter(uuid) from public;
grant execute on function letter_with_code(text), county_of_letter(uuid) to asfound_service;
