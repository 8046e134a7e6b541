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
alter table original_fault enable row level security;
alter table original_round enable row level security;

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

-- What whoever watches the service is told of its work: counts over all counties, and nothing of what is in them.

create function service_figures() returns table (figure text, state text, value double precision)
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select 'jobs', job.state, count(*) from job where job.state <> 'done' group by job.state
  union all
  select 'oldest job', 'waiting', coalesce(extract(epoch from now() - min(requested_at)), 0)
  from job where job.state = 'waiting'
  union all
  select 'documents', document.state, count(*) from document
  where document.state in ('received', 'reading', 'proposed', 'failed') group by document.state
  union all
  select 'deliveries', 'waiting', count(*) from delivery where delivery.state = 'waiting'
  union all
  select 'deliveries', 'dead', count(*) from delivery where delivery.state = 'dead'
  union all
  -- The ends of the chains by their key, not their entries one by one; '*' is the service's own.
  select 'audit entries', 'kept', coalesce(sum(ends.number), 0)
  from (select id from county union all select '*') chain
  cross join lateral (select max(number) as number from audit where audit.county = chain.id) ends
$$;
revoke all on function service_figures() from public;
grant execute on function service_figures() to asfound_service;
