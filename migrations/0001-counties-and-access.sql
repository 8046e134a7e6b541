-- The role the service works as. It owns nothing, so that row-level security holds it in every table,
-- and it has no leave to change what the law wants unchanged.
do $$
begin
  if not exists (select from pg_roles where rolname = 'asfound_service') then
    create role asfound_service nologin;
  end if;
exception when duplicate_object or unique_violation then
  null; -- another database of this cluster was made at the same moment
end
$$;

do $$
begin
  if not pg_has_role(current_user, 'asfound_service', 'SET') then
    execute format('grant asfound_service to %I', current_user);
  end if;
end
$$;

grant usage on schema public to asfound_service;

-- Who is asking, set for one transaction at a time; null (and so: nothing) when nobody said.
create function asking_county() returns text stable parallel safe language sql
  return nullif(current_setting('asfound.county', true), '');
create function asking_organization() returns uuid stable parallel safe language sql
  return nullif(current_setting('asfound.organization', true), '')::uuid;
create function asking_account() returns uuid stable parallel safe language sql
  return nullif(current_setting('asfound.account', true), '')::uuid;
create function asking_role() returns text stable parallel safe language sql
  return nullif(current_setting('asfound.role', true), '');

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
  created_at timestamptz not null default now()
);

create table account (
  id uuid primary key,
  organization uuid not null references organization (id),
  label text not null,
  role text not null check (role in ('firm', 'reviewer', 'agent')),
  suspended_at timestamptz,
  created_at timestamptz not null default now()
);
create index account_organization on account (organization);

-- Only the SHA-256 of a token is kept: reading this table gives nobody a token.
create table access_token (
  id uuid primary key,
  account uuid not null references account (id),
  name text not null,
  hash bytea not null unique check (octet_length(hash) = 32),
  counties text[] not null,
  created_at timestamptz not null default now(),
  expires_at timestamptz,
  revoked_at timestamptz,
  last_used_at timestamptz
);
create index access_token_account on access_token (account);

alter table county enable row level security;
alter table organization enable row level security;
alter table account enable row level security;
alter table access_token enable row level security;

create policy anyone_reads on county for select to asfound_service using (true);
create policy own_or_reviewer on organization for select to asfound_service
  using (id = asking_organization() or asking_role() in ('reviewer', 'service'));
create policy own_or_reviewer on account for select to asfound_service
  using (organization = asking_organization() or asking_role() in ('reviewer', 'service'));

grant select on county, organization, account to asfound_service;

-- The one question asked before anybody is known. Notes the use at most once a minute: a write for each
-- request would make every read of the service a write of the database.
create function find_access_token(token_hash bytea)
  returns table (token uuid, account uuid, organization uuid, role text, counties text[], expires_at timestamptz)
  language plpgsql security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
begin
  return query
    select t.id, a.id, a.organization, a.role, t.counties, t.expires_at
    from access_token t join account a on a.id = t.account
    where t.hash = token_hash and t.revoked_at is null and a.suspended_at is null
      and (t.expires_at is null or t.expires_at > now());
  if found then
    update access_token set last_used_at = now()
      where hash = token_hash and (last_used_at is null or last_used_at < now() - interval '1 minute');
  end if;
end
$$;
revoke all on function find_access_token(bytea) from public;
grant execute on function find_access_token(bytea) to asfound_service;
