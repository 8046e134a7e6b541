-- Originals whose bytes are not what came in, or that are gone, as they were last looked through; and when that was.
create table original_fault (
  hash text primary key check (hash ~ '^[0-9a-f]{64}$'),
  state text not null check (state in ('damaged', 'missing')),
  found_at timestamptz not null
);
create table original_round (
  one boolean primary key default true check (one),
  ended_at timestamptz not null,
  looked bigint not null
);
-- Where the audit chains ended when it was last noted outside, and whether they still held what was noted before.
create table audit_noting (
  one boolean primary key default true check (one),
  noted_at timestamptz not null,
  faults bigint not null
);
alter table original_fault enable row level security;
alter table original_round enable row level security;
alter table audit_noting enable row level security;

create function upkeep_figures() returns table (figure text, state text, value double precision)
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select 'originals', kinds.state, count(f.hash)
  from (values ('damaged'), ('missing')) as kinds (state)
  left join original_fault f on f.state = kinds.state group by kinds.state
  union all
  select 'originals looked through', 'ago', extract(epoch from now() - ended_at) from original_round
  union all
  select 'audit breaks', 'known', count(*) from audit_break
  union all
  select 'audit noting', 'ago', extract(epoch from now() - noted_at) from audit_noting
  union all
  select 'audit noting', 'faults', faults from audit_noting
$$;
revoke all on function upkeep_figures() from public;
grant execute on function upkeep_figures() to asfound_service;
