-- Whoever has no program to be told by reads what changed here: a subscription without an address, and so without a key.
alter table subscription alter column address drop not null;
alter table subscription alter column secret drop not null;
alter table subscription add constraint address_and_key_together check ((address is null) = (secret is null));

-- As before, but what is to be read here is delivered by being written.
create or replace function tell_of_status() returns trigger
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
