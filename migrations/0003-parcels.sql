create extension if not exists pg_trgm;
create extension if not exists btree_gist;

-- These three run for every row of a county's import: plain replacing, and a regular expression only where
-- nothing else does, is ten times faster than one for each rule.

-- A parcel number as people spell it: separators, case, and the letters typed for digits do not matter.
create function parcel_key(number text) returns text immutable strict parallel safe language sql
  return translate(upper(number), 'OIL -./,:;_%#''"()[]\–—' || chr(9), '011');

-- The same with each group's leading zeros dropped: 7-412-31 is 07-0412-0031.
create function parcel_loose_key(number text) returns text immutable strict parallel safe language sql
  return btrim(regexp_replace(
    translate(upper(number), 'OIL -/,:;_%#''"()[]\–—', '011..................'),
    '(^|\.)[.0]+(?=[^.])', '\1', 'g'), '.');

-- An address as it is searched: lower case, no punctuation, the usual abbreviations written out.
create function address_key(address text) returns text immutable strict parallel safe language sql
  return btrim(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(
    replace(replace(
      ' ' || translate(lower(address), '.,;:#-/_%\''"()', '          ') || ' ',
      '  ', ' '), '  ', ' '),
      ' rd ', ' road '), ' st ', ' street '), ' str ', ' street '), ' ln ', ' lane '), ' la ', ' lane '),
      ' ave ', ' avenue '), ' av ', ' avenue '), ' dr ', ' drive '), ' ct ', ' court '), ' hwy ', ' highway '),
      ' rte ', ' route '));

-- Its two halves: 412b Mill Pond Rd stands at 412 on "mill pond road".
create function house_number(address text) returns integer immutable strict parallel safe language sql
  return substring(address from '^\s*(\d{1,7})[[:alpha:]]?\s')::integer;
create function street_key(address text) returns text immutable strict parallel safe language sql
  return address_key(regexp_replace(address, '^\s*\d+[[:alpha:]]?\s+', ''));

create table parcel (
  county text not null references county (id),
  id uuid not null,
  number text not null,
  key text not null generated always as (parcel_key(number)) stored,
  loose_key text not null generated always as (parcel_loose_key(number)) stored,
  address text,
  house_number integer generated always as (house_number(address)) stored,
  street_key text generated always as (street_key(address)) stored,
  -- Split or merged away: kept, because its old number must keep finding what became of it.
  retired_on date,
  revision integer not null default 1,
  created_at timestamptz not null default now(),
  primary key (county, id),
  unique (county, number)
);
create index parcel_by_key on parcel (county, key text_pattern_ops);
create index parcel_by_loose_key on parcel (county, loose_key text_pattern_ops);
create index parcel_by_address on parcel (county, street_key, house_number);

-- Each street once: a misspelled one is looked for among a few thousand names instead of a million addresses.
-- A street that no parcel stands on any more does no harm.
create table street (
  county text not null references county (id),
  key text not null,
  primary key (county, key)
);
create index street_by_likeness on street using gist (county, key gist_trgm_ops (siglen = 64));

create function note_streets() returns trigger
  language plpgsql security definer set search_path = pg_catalog, public
as $$
begin
  insert into street (county, key)
    select distinct county, street_key from changed where street_key <> ''
    on conflict do nothing;
  return null;
end
$$;
create trigger note_streets_of_new after insert on parcel
  referencing new table as changed for each statement execute function note_streets();
create trigger note_streets_of_changed after update on parcel
  referencing new table as changed for each statement execute function note_streets();

-- Numbers that once stood for this parcel, or for the land it was made from. After a split one old number
-- finds several parcels.
create table parcel_alias (
  county text not null,
  parcel uuid not null,
  number text not null,
  key text not null generated always as (parcel_key(number)) stored,
  loose_key text not null generated always as (parcel_loose_key(number)) stored,
  kind text not null check (kind in ('renumbered', 'split', 'merged')),
  changed_on date,
  note text,
  primary key (county, parcel, number),
  foreign key (county, parcel) references parcel (county, id)
);
create index parcel_alias_by_key on parcel_alias (county, key text_pattern_ops);
create index parcel_alias_by_loose_key on parcel_alias (county, loose_key text_pattern_ops);

-- One row an agent may read: the status as it was last derived, good until a day when time alone changes it.
create table parcel_status (
  county text not null,
  parcel uuid not null,
  word text not null,
  good_until date,
  derived_at timestamptz not null,
  body jsonb not null,
  primary key (county, parcel),
  foreign key (county, parcel) references parcel (county, id)
);

alter table parcel enable row level security;
alter table parcel_alias enable row level security;
alter table parcel_status enable row level security;
alter table street enable row level security;

create policy of_the_county on parcel to asfound_service using (county = asking_county());
create policy of_the_county on parcel_alias to asfound_service using (county = asking_county());
create policy of_the_county on parcel_status for select to asfound_service using (county = asking_county());
create policy derived on parcel_status to asfound_service
  using (county = asking_county() and asking_role() = 'service');

grant select, insert, update on parcel, parcel_status to asfound_service;
grant select, insert on parcel_alias to asfound_service;

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
