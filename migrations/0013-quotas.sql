-- What each organization used on each day, of what it may use so much of a day.
create table quota_use (
  organization uuid not null references organization (id),
  what text not null,
  day date not null,
  used bigint not null,
  primary key (organization, what, day)
);
alter table quota_use enable row level security;

-- Counts a use for whoever asks, and answers what the day comes to; where that would be more than `most`, it counts nothing
-- and answers null. Days of long ago go with the first use of a new one.
create function spend_quota(of_what text, amount bigint, most bigint) returns bigint
  language plpgsql security definer set search_path = pg_catalog, public
as $$
declare
  today constant date := (now() at time zone 'UTC')::date;
  total bigint;
begin
  insert into quota_use as u (organization, what, day, used) values (asking_organization(), of_what, today, amount)
    on conflict (organization, what, day) do update set used = u.used + excluded.used
    returning used into total;
  if total > most then
    update quota_use set used = used - amount
      where organization = asking_organization() and what = of_what and day = today;
    return null;
  end if;
  if total = amount then
    delete from quota_use where organization = asking_organization() and day < today - 30;
  end if;
  return total;
end
$$;

-- How many of something the asking organization has, over all its counties.
create function standing_quota(of_what text) returns bigint
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select case of_what
    when 'drafts' then
      (select count(*) from findings where organization = asking_organization() and state = 'draft')
    when 'subscriptions' then
      (select count(*) from subscription where organization = asking_organization() and ended_at is null)
    when 'tokens' then
      (select count(*) from access_token t join account a on a.id = t.account
        where a.organization = asking_organization() and t.revoked_at is null
          and (t.expires_at is null or t.expires_at > now()))
  end
$$;
revoke all on function spend_quota(text, bigint, bigint), standing_quota(text) from public;
grant execute on function spend_quota(text, bigint, bigint), standing_quota(text) to asfound_service;
