-- Who did what to which record when, in a chain for each county: every entry is hashed together with the hash of the
-- one before it, so that none can be changed, left out or put in between unseen. `npm run audit:verify` follows it.
--
-- The database itself writes it while a transaction commits, whatever operation or hand made the change. Nobody else
-- does: the service's role has no leave to, and the owner would first have to switch a trigger off.
create table audit (
  -- Whose chain: a county's, or '*' for what belongs to none, as accounts and tokens.
  county text not null,
  number bigint not null check (number >= 1),
  at timestamptz not null,
  -- `restated`: was there before the audit, or got another shape and the same meaning from a later version.
  act text not null check (act in ('made', 'changed', 'removed', 'restated')),
  -- The record's table and its key there. No references: an entry outlives what it speaks of.
  kind text not null,
  record text not null,
  -- In whose name the transaction ran; the role `owner` is the command line, or a hand in the database.
  account uuid,
  organization uuid,
  role text not null,
  -- SHA-256, 64 hex digits each. Not checked by patterns, which would cost as much as all the rest of an entry.
  before_hash text,
  after_hash text,
  hash text not null,
  primary key (county, number)
);
create index audit_by_record on audit (county, kind, record, number);

alter table audit enable row level security;
create policy reviewer_reads on audit for select to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
grant select on audit to asfound_service;

-- What was already wrong with the audit when a backup that says so was restored, for as long as there is this database.
create table audit_break (
  number bigint generated always as identity primary key,
  noted_at timestamptz not null default now(),
  says text not null
);
alter table audit_break enable row level security;

-- Where the audit chains ended when it was last noted outside, and whether they still held what was noted before.
create table audit_noting (
  one boolean primary key default true check (one),
  noted_at timestamptz not null,
  faults bigint not null
);
alter table audit_noting enable row level security;

-- SHA-256 of a record: of its columns that hold something, as PostgreSQL writes jsonb (keys by length, then by bytes).
-- So a column that a later version adds changes nothing where it is empty.
create function record_hash(record jsonb) returns text immutable strict parallel safe language sql
  return encode(sha256(convert_to(
    (record - array(select key from jsonb_each(record) where value = 'null'))::text,
    'UTF8')), 'hex');

-- Adds to a chain. What is hashed is the hash of the entry before (64 zeros before the first) and then the entry as
-- canonical JSON (RFC 8785). Whoever comes second waits until the first has committed; a fork would break the key.
create function append_audit_entry(
  chain text, did text, of_kind text, of_record text, hash_before text, hash_after text) returns void
  language plpgsql set search_path = pg_catalog, public
  -- Planned once, perhaps on an empty table; and what is wanted is always the end of the key.
  set enable_seqscan = off set enable_bitmapscan = off set enable_sort = off
as $$
declare
  last record;
  this bigint;
  moment timestamptz;
  entry text;
  who constant uuid := asking_account();
  of_organization constant uuid := asking_organization();
  as_role constant text := coalesce(asking_role(), 'owner');
begin
  perform pg_advisory_xact_lock(hashtextextended('audit ' || chain, 0));
  -- The collation of a variable is that of whatever it was called with, and with another one the key is no use.
  select number, hash into last from audit where county = chain collate "default" order by number desc limit 1;
  this := coalesce(last.number, 0) + 1;
  moment := clock_timestamp();
  entry := format('{"account":%s,"act":%s,"afterHash":%s,"at":"%s","beforeHash":%s,"county":%s,"kind":%s,"number":%s,'
    '"organization":%s,"record":%s,"role":%s}',
    coalesce(to_json(who)::text, 'null'), to_json(did), coalesce(to_json(hash_after)::text, 'null'),
    to_char(moment at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'), coalesce(to_json(hash_before)::text, 'null'),
    to_json(chain), to_json(of_kind), this, coalesce(to_json(of_organization)::text, 'null'), to_json(of_record),
    to_json(as_role));
  insert into audit
    (county, number, at, act, kind, record, account, organization, role, before_hash, after_hash, hash)
  values
    (chain, this, moment, did, of_kind, of_record, who, of_organization, as_role, hash_before, hash_after,
     encode(sha256(convert_to(coalesce(last.hash, repeat('0', 64)) || entry, 'UTF8')), 'hex'));
end
$$;
revoke all on function append_audit_entry(text, text, text, text, text, text) from public;

-- For a table whose records are watched, with the column that names the chain ('' for none), the columns of the key,
-- and the columns that are no part of the record. To be deferred, so that a chain is held only while a transaction
-- commits, and by one that waits for nothing else.
create function append_audit() returns trigger
  language plpgsql security definer set search_path = pg_catalog, public set timezone = 'UTC'
as $$
declare
  left_out constant text[] := string_to_array(tg_argv[2], ',');
  was constant jsonb := case when tg_op <> 'INSERT' then to_jsonb(old) - left_out end;
  becomes constant jsonb := case when tg_op <> 'DELETE' then to_jsonb(new) - left_out end;
  hash_before constant text := record_hash(was);
  hash_after constant text := record_hash(becomes);
  named constant jsonb := coalesce(becomes, was);
begin
  if hash_before = hash_after then return null; end if;
  perform append_audit_entry(
    coalesce(named ->> nullif(tg_argv[0], ''), '*'),
    case tg_op when 'INSERT' then 'made' when 'UPDATE' then 'changed' else 'removed' end,
    tg_table_name,
    (select string_agg(named ->> key, '/' order by place)
      from unnest(string_to_array(tg_argv[1], ',')) with ordinality as keys (key, place)),
    hash_before, hash_after);
  return null;
end
$$;

create function never_emptied() returns trigger language plpgsql as $$
begin
  raise exception 'the records of % are never removed as a whole', tg_table_name using errcode = 'restrict_violation';
end
$$;

-- Which tables are watched, and how, as their triggers have it.
create view watched_table as
  select t.tgrelid::regclass as watched, c.relname::text as kind, arguments[1] as chain,
    string_to_array(arguments[2], ',') as key, string_to_array(arguments[3], ',') as left_out,
    t.tgenabled = 'O' as switched_on
  from pg_trigger t
  join pg_class c on c.oid = t.tgrelid
  cross join lateral (select string_to_array(encode(t.tgargs, 'escape'), '\000')) as given (arguments)
  where t.tgfoid = 'append_audit'::regproc;

-- The records of a watched table as they are now, named and hashed as the audit does it.
create function watched_records(of_table regclass) returns table (county text, kind text, record text, hash text)
  language plpgsql stable set search_path = pg_catalog, public set timezone = 'UTC'
as $$
declare
  how watched_table;
begin
  select * into strict how from watched_table where watched = of_table;
  return query execute format(
    'select coalesce(r ->> nullif(%L, ''''), ''*''), %L, concat_ws(''/'', %s), record_hash(r)
       from (select to_jsonb(t) - $1 from %s t) as now (r)',
    how.chain, how.kind, (select string_agg(format('r ->> %L', key), ', ') from unnest(how.key) as keys (key)),
    of_table) using how.left_out;
end
$$;

-- Adds an entry for every record whose last one does not say what it is now. For a migration, after it has given the
-- records of a table another shape without changing rows, as by a new column with a default.
create function restate_records(of_table regclass) returns void
  language sql set search_path = pg_catalog, public
as $$
  select append_audit_entry(now.county, 'restated', now.kind, now.record, last.after_hash, now.hash)
  from (select * from watched_records(of_table) order by county, record) now
  left join lateral (
    select after_hash from audit a
    where a.county = now.county and a.kind = now.kind and a.record = now.record order by a.number desc limit 1
  ) last on true
  where last.after_hash is distinct from now.hash
$$;
revoke all on function watched_records(regclass), restate_records(regclass) from public;

-- Watches a table from now on; what is in it already is entered as it is.
create procedure watch_records(of_table regclass, key text, chain text default 'county', left_out text default '')
  language plpgsql set search_path = pg_catalog, public
as $$
begin
  execute format(
    'create constraint trigger append_audit after insert or update or delete on %s deferrable initially deferred
       for each row execute function append_audit(%L, %L, %L)', of_table, chain, key, left_out);
  execute format(
    'create trigger never_emptied before truncate on %s for each statement execute function never_emptied()', of_table);
  perform restate_records(of_table);
end
$$;
revoke all on procedure watch_records(regclass, text, text, text) from public;

-- What reaches a person is under the chain too: the list of parcels, where each stands, what differs, the pages as they
-- were read, what subscribers are sent, how files were understood, and who was invited. Left out of a record is what the
-- database works out by itself, and how far something is.
call watch_records('county', 'id', chain => 'id');
call watch_records('organization', 'id', chain => '');
call watch_records('account', 'id', chain => '');
call watch_records('access_token', 'id', chain => '', left_out => 'last_used_at');
call watch_records('sign_in', 'account', chain => '');
call watch_records('second_step', 'account', chain => '', left_out => 'last_step');
call watch_records('outside_identity', 'issuer,subject', chain => '');
call watch_records('access_event', 'id', chain => '');
call watch_records('signing_key', 'kid', chain => '');
call watch_records('admission', 'organization');
call watch_records('document', 'id');
call watch_records('transcription', 'id');
call watch_records('permit', 'id');
call watch_records('permit_revision', 'permit,revision');
call watch_records('findings', 'id');
call watch_records('findings_revision', 'findings,revision');
call watch_records('photo', 'id');
call watch_records('reconciliation', 'id');
call watch_records('decision', 'id');
call watch_records('letter', 'id');
call watch_records('letter_withdrawal', 'letter');
call watch_records('event', 'id');
call watch_records('taught_form', 'id');
call watch_records('taught_by', 'transcription,permit');
call watch_records('subscription', 'id');
call watch_records('parcel', 'id', left_out => 'key,loose_key,house_number,street_key');
call watch_records('parcel_alias', 'parcel,number', left_out => 'key,loose_key');
call watch_records('parcel_status', 'parcel', left_out => 'derived_at');
call watch_records('discrepancy', 'id', left_out => 'severity_rank');
call watch_records('discrepancy_change', 'id');
call watch_records('document_page', 'document,number');
call watch_records('delivery', 'id', left_out => 'state,tries,next_at,says,changed_at');
call watch_records('import', 'id',
  left_out => 'state,reason,job,rerun,rows_read,read_to_line,added,changed,unchanged,rejected,revision,ended_at');
call watch_records('import_mapping', 'kind,headings');
call watch_records('invitation', 'id', chain => '');

-- What is never changed: not by the service, whose role has no leave to, and not by the owner's hand either.
create function never_changed() returns trigger language plpgsql as $$
begin
  raise exception 'what is in % is never changed or removed; it is superseded', tg_table_name
    using errcode = 'restrict_violation';
end
$$;
do $$
declare
  kept text;
begin
  foreach kept in array array['audit', 'access_event', 'transcription', 'permit_revision', 'findings_revision',
    'reconciliation', 'discrepancy_change', 'decision', 'letter', 'letter_withdrawal', 'event', 'rule_book', 'audit_break'] loop
    execute format('create trigger never_changed before update or delete on %I
      for each statement execute function never_changed()', kept);
  end loop;
  foreach kept in array array['audit', 'audit_break', 'rule_book'] loop
    execute format('create trigger never_emptied before truncate on %I
      for each statement execute function never_emptied()', kept);
  end loop;
end
$$;

create trigger keep_submitted_there before delete on findings
  for each row when (old.state = 'submitted') execute function keep_submitted_findings();

-- A permit is only ever revised: what it said before stands among its revisions, and what it says now is the newest.
create function keep_revisions_in_step() returns trigger
  language plpgsql security definer set search_path = pg_catalog, public
as $$
begin
  if not exists (select from permit_revision r where r.county = new.county and r.permit = new.id
      and r.revision = new.revision and r.record = new.record) then
    raise exception 'permit % says what none of its revisions does', new.id using errcode = 'restrict_violation';
  end if;
  return null;
end
$$;
create constraint trigger keep_revisions_in_step after insert or update on permit deferrable initially deferred
  for each row execute function keep_revisions_in_step();
create trigger never_removed before delete on permit for each statement execute function never_changed();

-- A paper is what came in.
create function keep_paper() returns trigger language plpgsql as $$
begin
  raise exception 'the paper of document % is never another', old.id using errcode = 'restrict_violation';
end
$$;
create trigger keep_paper before update on document
  for each row when (old.content_hash is distinct from new.content_hash or old.bytes is distinct from new.bytes
    or old.received_by is distinct from new.received_by or old.received_at is distinct from new.received_at)
  execute function keep_paper();
create trigger never_removed before delete on document for each statement execute function never_changed();
