-- How a person signs in to the pages: a name and a password for an account. Of the password only its argon2id hash is
-- kept, with its salt and costs, in the string form that the algorithm's reference defines.
create table sign_in (
  account uuid primary key references account (id),
  name text not null unique check (name = lower(name) and name ~ '^[a-z0-9][a-z0-9._@+-]{2,79}$'),
  password_hash text not null check (password_hash like '$argon2id$%'),
  counties text[] not null,
  -- Wrong passwords since the last right one; nobody may try again before `wait_until`.
  misses integer not null default 0,
  wait_until timestamptz,
  changed_at timestamptz not null default now()
);

-- A browser that is signed in. Only the SHA-256 of its cookie is kept: reading this table gives nobody a session.
create table session (
  hash bytea primary key check (octet_length(hash) = 32),
  account uuid not null references account (id),
  counties text[] not null,
  begun_at timestamptz not null default now(),
  last_used_at timestamptz not null default now(),
  ends_at timestamptz not null
);
create index session_by_account on session (account);

-- Neither table is anybody's to read: only through the functions below, each of which answers one question.
alter table sign_in enable row level security;
alter table session enable row level security;

-- What a password is to be checked against; nothing while the account is suspended.
create function find_sign_in(asked text)
  returns table (account uuid, password_hash text, wait_until timestamptz)
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select s.account, s.password_hash, s.wait_until
  from sign_in s join account a on a.id = s.account
  where s.name = asked and a.suspended_at is null
$$;

-- After five wrong passwords each further one doubles the wait, from half a minute to a quarter of an hour.
create function note_wrong_password(asked text) returns void
  language sql volatile security definer set search_path = pg_catalog, public
as $$
  update sign_in
  set misses = misses + 1,
    wait_until = case when misses < 5 then null
      else now() + least(interval '30 seconds' * power(2, least(misses - 5, 10)), interval '15 minutes') end
  where name = asked
$$;

create function begin_session(for_account uuid, session_hash bytea, until timestamptz) returns void
  language sql volatile security definer set search_path = pg_catalog, public
as $$
  update sign_in set misses = 0, wait_until = null where account = for_account;
  delete from session where ends_at < now() - interval '30 days';
  insert into session (hash, account, counties, ends_at)
    select session_hash, s.account, s.counties, until from sign_in s where s.account = for_account
$$;

-- Notes the use at most once a minute, as for tokens. A session unused for four hours has ended.
create function find_session(session_hash bytea)
  returns table (account uuid, organization uuid, role text, counties text[], ends_at timestamptz)
  language plpgsql security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
begin
  return query
    select a.id, a.organization, a.role, s.counties, s.ends_at
    from session s join account a on a.id = s.account
    where s.hash = session_hash and a.suspended_at is null and s.ends_at > now()
      and s.last_used_at > now() - interval '4 hours';
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

revoke all on function find_sign_in(text), note_wrong_password(text), begin_session(uuid, bytea, timestamptz),
  find_session(bytea), end_session(bytea) from public;
grant execute on function find_sign_in(text), note_wrong_password(text), begin_session(uuid, bytea, timestamptz),
  find_session(bytea), end_session(bytea) to asfound_service;
