-- The question that is asked thousands of times a second, in one statement: the status of the parcel that bears a number.
-- Everybody who may come into a county may read every status in it, so that who is asking need not be set first; which
-- county that is, whoever calls has to have made sure of.
create function status_of(of_county text, of_number text)
  returns table (id uuid, number text, address text, retired_on date, status jsonb, good_until date, derived_at timestamptz)
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select p.id, p.number, p.address, p.retired_on, s.body, s.good_until, s.derived_at
  from parcel p join parcel_status s on s.county = p.county and s.parcel = p.id
  where p.county = of_county and p.number = of_number
$$;
revoke all on function status_of(text, text) from public;
grant execute on function status_of(text, text) to asfound_service;
