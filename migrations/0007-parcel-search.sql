-- Search for the one who is asking. The operators of trigram indexes are not leakproof, so that under
-- row-level security PostgreSQL would not use the index: this runs as the owner, and holds the county itself.
--
-- From the surest to the vaguest, and no further than needed: the number in any spelling, an old number, the
-- beginning of a number, the address in part, the address misspelt.
create function search_parcels(query text, most integer)
  returns table (parcel uuid, matched text, says text, score real)
  language plpgsql stable security definer set search_path = pg_catalog, public
as $$
#variable_conflict use_column
declare
  here constant text := asking_county();
  wanted constant text := parcel_key(query);
  loose constant text := parcel_loose_key(query);
  street constant text := address_key(query);
  has_digit constant boolean := wanted ~ '[0-9]';
begin
  if here is null or wanted is null or wanted = '' then return; end if;

  if has_digit then
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
  end if;

  if has_digit and length(wanted) >= 2 and query !~ '[[:alpha:]]{2}' then
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

  if length(street) < 3 then return; end if;
  return query
    select p.id, 'address', p.address, 0.9::real from parcel p
    where p.county = here and p.address_key like '%' || street || '%'
    order by length(p.address_key), p.address_key, p.id limit most;
  if found then return; end if;

  perform set_config('pg_trgm.word_similarity_threshold', '0.6', true);
  return query
    select p.id, 'address-like', p.address, word_similarity(street, p.address_key) from parcel p
    where p.county = here and street <% p.address_key
    order by 4 desc, p.address_key, p.id limit most;
  if found then return; end if;

  perform set_config('pg_trgm.word_similarity_threshold', '0.4', true);
  return query
    select p.id, 'address-like', p.address, word_similarity(street, p.address_key) from parcel p
    where p.county = here and street <% p.address_key
    order by 4 desc, p.address_key, p.id limit most;
end
$$;
revoke all on function search_parcels(text, integer) from public;
grant execute on function search_parcels(text, integer) to asfound_service;
