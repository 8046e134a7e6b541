create table county (
  id text primary key check (id ~ '^[a-z][a-z0-9-]{1,39}$'),
  name text not null,
  rule_pack text not null,
  parcel_format jsonb not null,
  revision integer not null default 1,
  created_at timestamptz not null default now()
);

create table organization (
  id uuid primary key,
  kind text not null check (kind in ('county', 'firm', 'agent')),
  name text not null,
  -- Whether its people must give a one-time code after their password, or may.
  second_step text not null default 'offered' check (second_step in ('offered', 'required')),
  created_at timestamptz not null default now()
);

create table account (
  id uuid primary key,
  organization uuid not null references organization (id),
  label text not null,
  role text not null check (role in ('firm', 'reviewer', 'agent')),
  administers boolean not null default false,
  suspended_at timestamptz,
  -- What was personal about it is gone; the account stays as a name for what it did.
  erased_at timestamptz,
  created_at timestamptz not null default now()
);
create index account_organization on account (organization);

-- Which organizations work in which county: a county admits them, and may withdraw that. The row stays, so that what
-- an organization handed in keeps its name.
create table admission (
  county text not null references county (id),
  organization uuid not null references organization (id),
  admitted_by uuid references account (id),
  admitted_at timestamptz not null default now(),
  withdrawn_at timestamptz,
  primary key (county, organization)
);
create index admission_by_organization on admission (organization, county);

-- Only the SHA-256 of a token is kept: reading this table gives nobody a token.
create table access_token (
  id uuid primary key,
  account uuid not null references account (id),
  name text not null,
  hash bytea not null unique check (octet_length(hash) = 32),
  -- `counties` is where it may read, `writes` where it may write too; `manages`: the people, tokens and sessions that its
  -- account may.
  counties text[] not null,
  writes text[] not null default '{}',
  manages boolean not null default false,
  issued_by uuid references account (id),
  created_at timestamptz not null default now(),
  expires_at timestamptz,
  revoked_at timestamptz,
  last_used_at timestamptz,
  check (writes <@ counties)
);
create index access_token_account on access_token (account);

-- How a person signs in to the pages: a name and a password for an account. Of the password only its argon2id hash is
-- kept, with its salt and costs, in the string form that the algorithm's reference defines. A person whose county has a
-- sign-in of its own needs none here. Wrong ones are counted in `throttle`, for names that do not exist too.
create table sign_in (
  account uuid primary key references account (id),
  name text not null unique check (name = lower(name) and name ~ '^[a-z0-9][a-z0-9._@+-]{2,79}$'),
  password_hash text check (password_hash like '$argon2id$%'),
  changed_at timestamptz not null default now()
);

-- A browser that is signed in. Only the SHA-256 of its cookie is kept: reading this table gives nobody a session.
create table session (
  hash bytea primary key check (octet_length(hash) = 32),
  id uuid not null default gen_random_uuid() unique,
  account uuid not null references account (id),
  -- `second-step`: the password was right, the code is still to come. `set-up`: one has to be set up first.
  stage text not null default 'full' check (stage in ('full', 'second-step', 'set-up')),
  idle interval not null default '4 hours',
  -- In a few words, as "Firefox on Windows": what its owner tells it by.
  browser text,
  begun_at timestamptz not null default now(),
  last_used_at timestamptz not null default now(),
  ends_at timestamptz not null
);
create index session_by_account on session (account);

-- The link by which somebody chooses a password, once.
create table invitation (
  id uuid primary key,
  account uuid not null references account (id),
  hash bytea not null unique check (octet_length(hash) = 32),
  made_by uuid references account (id),
  made_at timestamptz not null,
  expires_at timestamptz not null,
  used_at timestamptz
);
create index invitation_by_account on invitation (account);

-- The shared secret of one-time codes (RFC 6238), sealed by a key that is not in the database; and the last step of
-- time of which a code was taken, so that none is taken twice.
create table second_step (
  account uuid primary key references account (id),
  sealed_secret bytea not null,
  confirmed_at timestamptz,
  last_step bigint not null default 0
);

-- Each 120 random bits, so that a fast hash is enough.
create table recovery_code (
  account uuid not null references account (id),
  hash bytea not null check (octet_length(hash) = 32),
  used_at timestamptz,
  primary key (account, hash)
);

-- Who somebody is to the county's own provider (OpenID Connect).
create table outside_identity (
  issuer text not null,
  subject text not null,
  account uuid not null references account (id),
  bound_at timestamptz not null,
  primary key (issuer, subject)
);
create index outside_identity_by_account on outside_identity (account);

-- Guesses at one thing (a name, an address, a code), by the hash of what it is.
create table throttle (
  key bytea primary key check (octet_length(key) = 32),
  tries integer not null,
  wait_until timestamptz,
  changed_at timestamptz not null
);
create index throttle_by_age on throttle (changed_at);

-- What happened to accounts, tokens and sessions. Only ever added to.
create table access_event (
  id uuid primary key,
  organization uuid not null references organization (id),
  account uuid references account (id),
  kind text not null,
  made_by uuid references account (id),
  body jsonb not null default '{}',
  happened_at timestamptz not null
);
create index access_event_by_account on access_event (account, id);
create index access_event_by_organization on access_event (organization, id);

-- Read past the policies of `account`, which ask this.
create function asking_administers() returns boolean
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select exists (select from account where id = asking_account() and administers and suspended_at is null)
$$;
create function organization_of(asked uuid) returns uuid
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select organization from account where id = asked
$$;
revoke all on function asking_administers(), organization_of(uuid) from public;
grant execute on function asking_administers(), organization_of(uuid) to asfound_service;

-- Whoever admits works at no county's records meanwhile, so that the whole of it (organization, admission, first person)
-- is one transaction: whether they may is asked of where their own department works, and not of the county at hand.
create function asking_works_in(asked text) returns boolean
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select exists (select from admission
    where county = asked and organization = asking_organization() and withdrawn_at is null)
$$;
revoke all on function asking_works_in(text) from public;
grant execute on function asking_works_in(text) to asfound_service;

alter table county enable row level security;
alter table organization enable row level security;
alter table account enable row level security;
alter table access_token enable row level security;
alter table sign_in enable row level security;
alter table session enable row level security;
alter table admission enable row level security;
alter table invitation enable row level security;
alter table second_step enable row level security;
alter table recovery_code enable row level security;
alter table outside_identity enable row level security;
alter table throttle enable row level security;
alter table access_event enable row level security;

create policy anyone_reads on county for select to asfound_service using (true);

create policy own on admission for select to asfound_service using (organization = asking_organization());
create policy of_the_county on admission for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

create policy administrator_sees on admission for select to asfound_service
  using (asking_role() = 'reviewer' and asking_county() is null and asking_works_in(county));
create policy administrator_admits on admission for insert to asfound_service
  with check (asking_role() = 'reviewer' and asking_administers() and asking_works_in(county));
create policy administrator_changes on admission for update to asfound_service
  using (asking_role() = 'reviewer' and asking_administers() and asking_works_in(county));

-- Another county's organizations are nobody's business here.
create policy own on organization for select to asfound_service using (id = asking_organization());
create policy of_the_county on organization for select to asfound_service
  using (asking_role() in ('reviewer', 'service') and exists (
    select from admission a where a.county = asking_county() and a.organization = organization.id));
create policy administrator_sees on organization for select to asfound_service
  using (asking_role() = 'reviewer' and asking_county() is null and exists (
    select from admission a where a.organization = organization.id));
create policy door on organization for select to asfound_service using (keeping_the_door());
create policy administrator_adds on organization for insert to asfound_service
  with check (kind in ('firm', 'agent') and asking_role() = 'reviewer' and asking_administers());

create policy own on account for select to asfound_service using (organization = asking_organization());
create policy of_the_county on account for select to asfound_service
  using (asking_role() in ('reviewer', 'service') and exists (
    select from admission a where a.county = asking_county() and a.organization = account.organization));
create policy door on account for select to asfound_service using (keeping_the_door());
create policy administrator_adds on account for insert to asfound_service
  with check (organization = asking_organization() and asking_administers());
create policy administrator_changes on account for update to asfound_service
  using (organization = asking_organization() and asking_administers());
create policy door_changes on account for update to asfound_service using (keeping_the_door());
-- The first person of an organization that a county takes in.
create policy door_adds on account for insert to asfound_service with check (keeping_the_door());

create policy own on access_token for select to asfound_service using (account = asking_account());
create policy administrator on access_token for select to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy own_adds on access_token for insert to asfound_service with check (account = asking_account());
create policy administrator_adds on access_token for insert to asfound_service
  with check (organization_of(account) = asking_organization() and asking_administers());
create policy own_changes on access_token for update to asfound_service using (account = asking_account());
create policy administrator_changes on access_token for update to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy door_changes on access_token for update to asfound_service using (keeping_the_door());
create policy door_sees on access_token for select to asfound_service using (keeping_the_door());

create policy own on session for select to asfound_service using (account = asking_account());
create policy administrator on session for select to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy own_changes on session for update to asfound_service using (account = asking_account());
create policy administrator_changes on session for update to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy door on session to asfound_service using (keeping_the_door());

create policy own on sign_in for select to asfound_service using (account = asking_account());
create policy administrator on sign_in for select to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy door on sign_in to asfound_service using (keeping_the_door());

create policy own on second_step for select to asfound_service using (account = asking_account());
create policy administrator on second_step for select to asfound_service
  using (organization_of(account) = asking_organization() and asking_administers());
create policy door on second_step to asfound_service using (keeping_the_door());
create policy door on invitation to asfound_service using (keeping_the_door());
create policy door on recovery_code to asfound_service using (keeping_the_door());
create policy door on outside_identity to asfound_service using (keeping_the_door());
create policy door on throttle to asfound_service using (keeping_the_door());

create policy own_happenings on access_event for insert to asfound_service
  with check (organization = asking_organization() or keeping_the_door());
create policy own on access_event for select to asfound_service using (account = asking_account());
create policy administrator on access_event for select to asfound_service
  using (organization = asking_organization() and asking_administers());
create policy door on access_event for select to asfound_service using (keeping_the_door());

grant select on county, organization, account to asfound_service;
grant select, insert on admission to asfound_service;
grant update (admitted_by, admitted_at, withdrawn_at) on admission to asfound_service;
grant insert on organization, account to asfound_service;
grant update (label, administers, suspended_at, erased_at) on account to asfound_service;
-- Hashes of tokens go in and never out.
grant select (id, account, name, counties, writes, manages, issued_by, created_at, expires_at, revoked_at, last_used_at)
  on access_token to asfound_service;
grant insert (id, account, name, hash, counties, writes, manages, issued_by, created_at, expires_at)
  on access_token to asfound_service;
grant update (name, expires_at, revoked_at) on access_token to asfound_service;
grant select, insert, update, delete on session, sign_in, invitation, second_step, recovery_code, outside_identity, throttle
  to asfound_service;
grant select, insert on access_event to asfound_service;

-- The one question asked before anybody is known. Notes the use at most once a minute: a write for each
-- request would make every read of the service a write of the database.
-- A token is good where it was made for and its organization is admitted still.
create function find_access_token(token_hash bytea)
  returns table (token uuid, account uuid, organization uuid, role text, administers boolean, manages boolean,
    counties text[], writes text[], expires_at timestamptz)
  language plpgsql security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
begin
  return query
    select t.id, a.id, a.organization, a.role, a.administers, t.manages, here.counties,
      array(select unnest(t.writes) intersect select unnest(here.counties) order by 1), t.expires_at
    from access_token t join account a on a.id = t.account
    cross join lateral (select array(
      select d.county from admission d
      where d.organization = a.organization and d.withdrawn_at is null and d.county = any (t.counties)
      order by d.county)) as here (counties)
    where t.hash = token_hash and t.revoked_at is null and a.suspended_at is null
      and (t.expires_at is null or t.expires_at > now());
  if found then
    update access_token set last_used_at = now()
      where hash = token_hash and (last_used_at is null or last_used_at < now() - interval '1 minute');
  end if;
end
$$;

-- Notes the use at most once a minute, as for tokens. A session unused for as long as it may idle has ended.
create function find_session(session_hash bytea)
  returns table (session uuid, stage text, account uuid, organization uuid, role text, administers boolean,
    counties text[], ends_at timestamptz)
  language plpgsql security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
begin
  return query
    select s.id, s.stage, a.id, a.organization, a.role, a.administers, array(
      select d.county from admission d
      where d.organization = a.organization and d.withdrawn_at is null order by d.county), s.ends_at
    from session s join account a on a.id = s.account
    where s.hash = session_hash and a.suspended_at is null and s.ends_at > now()
      and s.last_used_at > now() - s.idle;
  if found then
    update session set last_used_at = now()
      where hash = session_hash and last_used_at < now() - interval '1 minute';
  end if;
end
$$;
create function end_session(session_hash bytea) returns void
  language sql volatile security definer set search_path = pg_catalog, public
as $$
  update session set ends_at = least(ends_at, now()) where hash = session_hash
$$;

revoke all on function find_access_token(bytea), find_session(bytea), end_session(bytea) from public;
grant execute on function find_access_token(bytea), find_session(bytea), end_session(bytea) to asfound_service;

-- Every process forgets whom it knew as soon as something about them changes.
create function tell_of_access() returns trigger language plpgsql as $$
begin
  perform pg_notify('asfound_access', '');
  return null;
end
$$;
create trigger tell_of_change after update of label, administers, suspended_at on account
  for each statement execute function tell_of_access();
create trigger tell_of_change after update of expires_at, revoked_at on access_token
  for each statement execute function tell_of_access();
create trigger tell_of_change after update of ends_at on session
  for each statement execute function tell_of_access();
create trigger tell_of_removal after delete on session
  for each statement execute function tell_of_access();
create trigger tell_of_change after insert or update on admission
  for each statement execute function tell_of_access();
