-- The role the service works as. It owns nothing, so that row-level security holds it in every table,
-- and it has no leave to change what the law wants unchanged.
do $$
begin
  if not exists (select from pg_roles where rolname = 'asfound_service') then
    create role asfound_service nologin;
  end if;
exception when duplicate_object or unique_violation then
  null; -- another database of this cluster was made at the same moment
end
$$;

do $$
begin
  if not pg_has_role(current_user, 'asfound_service', 'SET') then
    execute format('grant asfound_service to %I', current_user);
  end if;
end
$$;

grant usage on schema public to asfound_service;

-- Who is asking, set for one transaction at a time; null (and so: nothing) when nobody said.
create function asking_county() returns text stable parallel safe language sql
  return nullif(current_setting('asfound.county', true), '');
create function asking_organization() returns uuid stable parallel safe language sql
  return nullif(current_setting('asfound.organization', true), '')::uuid;
create function asking_account() returns uuid stable parallel safe language sql
  return nullif(current_setting('asfound.account', true), '')::uuid;
create function asking_role() returns text stable parallel safe language sql
  return nullif(current_setting('asfound.role', true), '');

-- The service itself at what belongs to no county: letting people in. No county's table shows it a row.
create function keeping_the_door() returns boolean stable parallel safe language sql
  return asking_role() = 'service' and asking_county() is null;
