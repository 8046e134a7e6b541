-- What whoever watches the service is told of its work: counts over all counties, and nothing of what is in them.
create index job_not_done on job (county, state, requested_at) where state <> 'done';
create index delivery_dead on delivery (county, subscription) where state = 'dead';

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
