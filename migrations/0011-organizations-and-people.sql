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

insert into admission (county, organization)
  select distinct c.id, a.organization
  from account a
  join (select account, unnest(counties) as county from access_token
        union select account, unnest(counties) from sign_in) given on given.account = a.id
  join county c on c.id = given.county;

-- Whether its people must give a one-time code after their password, or may.
alter table organization add second_step text not null default 'offered'
  check (second_step in ('offered', 'required'));

alter table account
  add administers boolean not null default false,
  -- What was personal about it is gone; the account stays as a name for what it did.
  add erased_at timestamptz;

-- `counties` is where it may read, `writes` where it may write too; `manages`: the people, tokens and sessions that
-- its account may.
alter table access_token
  add writes text[] not null default '{}',
  add manages boolean not null default false,
  add issued_by uuid references account (id),
  add check (writes <@ counties);
update access_token set writes = counties;

-- Where somebody may work follows from where their organization is admitted. A person whose county has a sign-in of
-- its own needs no password here.
alter table sign_in alter password_hash drop not null;
alter table sign_in drop counties;
alter table session drop counties;
-- Wrong passwords are counted in `throttle`, for names that do not exist too.
alter table sign_in drop misses, drop wait_until;

alter table session
  add id uuid not null default gen_random_uuid() unique,
  -- `second-step`: the password was right, the code is still to come. `set-up`: one has to be set up first.
  add stage text not null default 'full' check (stage in ('full', 'second-step', 'set-up')),
  add idle interval not null default '4 hours',
  -- In a few words, as "Firefox on Windows": what its owner tells it by.
  add browser text;

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

-- The service itself at what belongs to no county: letting people in. No county's table shows it a row.
create function keeping_the_door() returns boolean stable parallel safe language sql
  return asking_role() = 'service' and asking_county() is null;

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

alter table admission enable row level security;
alter table invitation enable row level security;
alter table second_step enable row level security;
alter table recovery_code enable row level security;
alter table outside_identity enable row level security;
alter table throttle enable row level security;
alter table access_event enable row level security;

create policy own on admission for select to asfound_service using (organization = asking_organization());
create policy of_the_county on admission for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy administrator_admits on admission for insert to asfound_service
  with check (county = asking_county() and asking_role() = 'reviewer' and asking_administers());
create policy administrator_changes on admission for update to asfound_service
  using (county = asking_county() and asking_role() = 'reviewer' and asking_administers());

-- Another county's organizations are nobody's business here.
drop policy own_or_reviewer on organization;
create policy own on organization for select to asfound_service using (id = asking_organization());
create policy of_the_county on organization for select to asfound_service
  using (asking_role() in ('reviewer', 'service') and exists (
    select from admission a where a.county = asking_county() and a.organization = organization.id));
create policy door on organization for select to asfound_service using (keeping_the_door());
create policy administrator_adds on organization for insert to asfound_service
  with check (kind in ('firm', 'agent') and asking_role() = 'reviewer' and asking_administers());

drop policy own_or_reviewer on account;
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

-- A token is good where it was made for and its organization is admitted still.
drop function find_access_token(bytea);
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

drop function find_session(bytea);
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
revoke all on function find_access_token(bytea), find_session(bytea) from public;
grant execute on function find_access_token(bytea), find_session(bytea) to asfound_service;
drop function find_sign_in(text);
drop function note_wrong_password(text);
drop function begin_session(uuid, bytea, timestamptz);

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
