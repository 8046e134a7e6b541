-- Search for the one who is asking. The operators of trigram indexes are not leakproof, so that under
-- row-level security PostgreSQL would not use the index: this runs as the owner, and holds the county itself.
--
-- From the surest to the vaguest, and no further than needed: the number in any spelling, an old number, the
-- beginning of a number, then the address: the street as written, in part, or misspelled; the house, or the
-- nearest ones.
create function search_parcels(query text, most integer)
  returns table (parcel uuid, matched text, says text, score real)
  language plpgsql stable security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
declare
  here constant text := asking_county();
  wanted constant text := parcel_key(query);
  loose constant text := parcel_loose_key(query);
  house constant integer := house_number(query);
  street constant text := street_key(query);
  like_number constant boolean := wanted ~ '[0-9]';
  has_word constant boolean := query ~ '[[:alpha:]]{3}';
  streets text[];
  likeness real := 1;
begin
  if here is null or wanted is null or wanted = '' then return; end if;

  if like_number then
    return query
      select p.id, 'number', p.number, 1::real from parcel p where p.county = here and p.key = wanted
      union
      select p.id, 'number', p.number, 1::real from parcel p where p.county = here and p.loose_key = loose
      limit most;
    if found then return; end if;

    return query
      select a.parcel, 'old-number', a.number, 1::real from parcel_alias a where a.county = here and a.key = wanted
      union
      select a.parcel, 'old-number', a.number, 1::real from parcel_alias a where a.county = here and a.loose_key = loose
      limit most;
    if found then return; end if;

    if not has_word then
      return query
        select * from (
          (select p.id, 'number-begins', p.number, 0.9::real from parcel p
            where p.county = here and p.key like wanted || '%' order by p.key limit most)
          union all
          (select a.parcel, 'old-number', a.number, 0.8::real from parcel_alias a
            where a.county = here and a.key like wanted || '%' order by a.key limit most)
        ) begins limit most;
      if found then return; end if;
    end if;
  end if;

  if length(street) < 3 then return; end if;
  streets := array(
    select s.key from street s
    where s.county = here and s.key like '%' || street || '%'
    order by s.key not like street || '%', length(s.key), s.key limit 20);
  if streets = '{}' then
    -- The nearest by trigrams, and those about as near; nothing where even the nearest shares too little.
    select array_agg(key order by distance, key), 1 - min(distance) into streets, likeness
    from (
      select *, min(distance) over () as least
      from (select s.key, s.key <-> street as distance from street s where s.county = here
            order by s.key <-> street limit 5) nearest
    ) about where distance <= least + 0.1;
    if streets is null or likeness < 0.3 then return; end if;
  end if;

  if house is not null then
    return query
      select p.id, 'address', p.address, likeness from parcel p
      where p.county = here and p.street_key = any (streets) and p.house_number = house
      order by array_position(streets, p.street_key), p.address, p.id limit most;
    if found then return; end if;
  end if;
  return query
    select p.id, 'street', p.address, (likeness / 2)::real from parcel p
    where p.county = here and p.street_key = any (streets)
    order by array_position(streets, p.street_key), abs(p.house_number - house), p.house_number, p.id limit most;
end
$$;
revoke all on function search_parcels(text, integer) from public;
grant execute on function search_parcels(text, integer) to asfound_service;
