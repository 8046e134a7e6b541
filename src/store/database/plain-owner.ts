import type { ClientBase } from 'pg'

/** Who owns the embedded database, and the service comes in as: nobody above its own tables, and no superuser. */
export const PLAIN_OWNER = 'asfound_owner'

/**
 * Makes the plain owner, with the password of the server's own folder; again at each start, so that one that was lost
 * half-way is there. The password is the hexadecimal one that this program made: it holds no quote. As the superuser.
 */
export async function makePlainOwner(client: ClientBase, password: string): Promise<void> {
  await client.query(`do $$
    begin
      perform pg_advisory_xact_lock(7032651907);
      if not exists (select from pg_roles where rolname = '${PLAIN_OWNER}') then
        create role ${PLAIN_OWNER} login createrole nosuperuser nocreatedb noreplication nobypassrls;
      end if;
    end
    $$`)
  await client.query(`alter role ${PLAIN_OWNER} password ${client.escapeLiteral(password)}`)
}

/** Gives a database that a superuser made, and all that lies in it, to the plain owner. In that database, as the superuser. */
export async function giveToPlainOwner(client: ClientBase, database: string): Promise<void> {
  await client.query(`alter database ${client.escapeIdentifier(database)} owner to ${PLAIN_OWNER}`)
  await client.query(`do $$
    declare
      given record;
    begin
      if exists (select from pg_roles where rolname = 'asfound_service') then
        execute 'grant asfound_service to ${PLAIN_OWNER} with admin option';
      end if;
      for given in
        select format('alter schema %I owner to ${PLAIN_OWNER}', nspname) as how from pg_namespace where nspname = 'pgboss'
        union all
        select format('alter %s %s owner to ${PLAIN_OWNER}',
          case relkind when 'v' then 'view' when 'm' then 'materialized view' when 'S' then 'sequence' else 'table' end,
          oid::regclass)
        from pg_class c where relnamespace::regnamespace::text in ('public', 'pgboss') and relkind in ('r', 'p', 'v', 'm', 'S')
          and not exists (select from pg_depend d where d.objid = c.oid
            and (d.deptype = 'e' or (c.relkind = 'S' and d.deptype in ('a', 'i'))))
        union all
        select format('alter routine %s owner to ${PLAIN_OWNER}', p.oid::regprocedure) from pg_proc p
        where pronamespace::regnamespace::text in ('public', 'pgboss')
          and not exists (select from pg_depend d where d.objid = p.oid and d.deptype = 'e')
        union all
        select format('alter type %s owner to ${PLAIN_OWNER}', t.oid::regtype) from pg_type t
        where typnamespace::regnamespace::text in ('public', 'pgboss') and typtype in ('e', 'd')
          and not exists (select from pg_depend d where d.objid = t.oid and d.deptype = 'e')
      loop
        execute given.how;
      end loop;
    end
    $$`)
}
