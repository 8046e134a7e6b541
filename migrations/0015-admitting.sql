-- Whoever admits works at no county's records meanwhile, so that the whole of it (organization, admission, first person)
-- is one transaction: whether they may is asked of where their own department works, and not of the county at hand.
create function asking_works_in(asked text) returns boolean
  language sql stable security definer set search_path = pg_catalog, public
as $$
  select exists (select from admission
    where county = asked and organization = asking_organization() and withdrawn_at is null)
$$;
revoke all on function asking_works_in(text) from public;
grant execute on function asking_works_in(text) to asfound_service;

drop policy administrator_admits on admission;
drop policy administrator_changes on admission;
create policy administrator_sees on admission for select to asfound_service
  using (asking_role() = 'reviewer' and asking_county() is null and asking_works_in(county));
create policy administrator_admits on admission for insert to asfound_service
  with check (asking_role() = 'reviewer' and asking_administers() and asking_works_in(county));
create policy administrator_changes on admission for update to asfound_service
  using (asking_role() = 'reviewer' and asking_administers() and asking_works_in(county));
create policy administrator_sees on organization for select to asfound_service
  using (asking_role() = 'reviewer' and asking_county() is null and exists (
    select from admission a where a.organization = organization.id));
