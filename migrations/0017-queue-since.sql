-- The queue of what changed since a day is read off the index alone, with whose it is: what did not change, or may not be
-- seen, is passed over without a look at its row.
drop index discrepancy_queue;
create index discrepancy_queue on discrepancy (county, state, severity_rank, raised_at, id) include (changed_at, organization);
drop index discrepancy_queue_of_kind;
create index discrepancy_queue_of_kind on discrepancy (county, kind, state, severity_rank, raised_at, id)
  include (changed_at, organization);
