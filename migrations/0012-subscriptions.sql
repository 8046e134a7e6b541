-- Who is told when the status of a parcel changes, and where.
create table subscription (
  county text not null references county (id),
  id uuid not null,
  organization uuid not null references organization (id),
  account uuid not null references account (id),
  -- Null with the key where no program is told: whoever has none reads here what changed.
  address text,
  -- The key that messages are signed with, sealed by a key that is not in the database.
  secret bytea,
  -- Null: every parcel of the county.
  parcel uuid,
  made_at timestamptz not null,
  ended_at timestamptz,
  -- Why it was ended, where the service did it.
  ended_because text,
  primary key (county, id),
  foreign key (county, parcel) references parcel (county, id),
  constraint address_and_key_together check ((address is null) = (secret is null))
);
create index subscription_by_parcel on subscription (county, parcel) where ended_at is null;
create index subscription_by_organization on subscription (county, organization, id);

-- One message to one subscriber: tried until it is taken, and kept where it never was.
create table delivery (
  county text not null,
  id uuid not null,
  subscription uuid not null,
  parcel uuid not null,
  -- The message to the byte: every try sends and signs the same.
  body text not null,
  state text not null default 'waiting' check (state in ('waiting', 'delivered', 'dead')),
  tries integer not null default 0,
  -- When it is tried next; while somebody is trying it, when it is taken that they died.
  next_at timestamptz not null,
  -- What came of the last try, in words.
  says text,
  made_at timestamptz not null default now(),
  changed_at timestamptz not null default now(),
  primary key (county, id),
  foreign key (county, subscription) references subscription (county, id),
  foreign key (county, parcel) references parcel (county, id)
);
create index delivery_due on delivery (county, next_at) where state = 'waiting';
create index delivery_dead on delivery (county, subscription) where state = 'dead';
create index delivery_by_subscription on delivery (county, subscription, made_at desc, id);

alter table subscription enable row level security;
alter table delivery enable row level security;

create policy own on subscription to asfound_service
  using (county = asking_county() and organization = asking_organization() and asking_role() <> 'service');
create policy service on subscription to asfound_service
  using (county = asking_county() and asking_role() = 'service');
-- Seen by whoever sees its subscription: the inner query is held by the policies above.
create policy with_subscription on delivery to asfound_service
  using (county = asking_county() and exists (
    select from subscription s where s.county = delivery.county and s.id = delivery.subscription));

grant select, insert, update on subscription to asfound_service;
grant select, update on delivery to asfound_service;

-- Whatever changes a status, in whichever process: its subscribers have a message waiting once that is committed. It
-- says what anybody may read of a parcel, and nothing of the file. What is to be read here is delivered by being written.
create function tell_of_status() returns trigger
  language plpgsql security definer set search_path = pg_catalog, public
as $$
declare
  before constant text := case tg_op when 'UPDATE' then old.word end;
begin
  insert into delivery (county, id, subscription, parcel, body, state, next_at)
  select new.county, gen_random_uuid(), s.id, new.parcel,
    jsonb_build_object(
      'type', 'parcel.status-changed',
      'timestamp', to_char(new.derived_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
      'data', jsonb_build_object('county', new.county, 'parcel', p.number, 'before', before, 'status', new.body))::text,
    case when s.address is null then 'delivered' else 'waiting' end,
    new.derived_at
  from subscription s
  join parcel p on p.county = new.county and p.id = new.parcel
  where s.county = new.county and s.ended_at is null and (s.parcel = new.parcel or s.parcel is null);
  return null;
end
$$;
create trigger tell_of_first_status after insert on parcel_status
  for each row execute function tell_of_status();
create trigger tell_of_changed_status after update of word on parcel_status
  for each row when (old.word is distinct from new.word) execute function tell_of_status();

-- Where there is something to deliver: asked before any county is known.
create function counties_with_deliveries_due(at timestamptz) returns setof text
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select c.id from county c
  where exists (select from delivery d where d.county = c.id and d.state = 'waiting' and d.next_at <= at)
$$;
revoke all on function counties_with_deliveries_due(timestamptz) from public;
grant execute on function counties_with_deliveries_due(timestamptz) to asfound_service;
