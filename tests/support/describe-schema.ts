import type pg from 'pg'

/** Each query gives lines of SQL or near it, in a fixed order; together they are all that the migrations made. */
const PARTS: readonly (readonly [string, string])[] = [
  [
    'Tables',
    `select format(E'table %I (\\n%s\\n)%s', c.relname,
       string_agg(format('  %I %s%s%s', a.attname, format_type(a.atttypid, a.atttypmod),
         case when a.attnotnull then ' not null' else '' end,
         case when a.attgenerated = 's' then ' generated as ' || pg_get_expr(d.adbin, d.adrelid)
              when d.adbin is not null then ' default ' || pg_get_expr(d.adbin, d.adrelid) else '' end),
         E',\\n' order by a.attnum),
       case when c.relrowsecurity then ' with row level security' else '' end) line
     from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
     left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
     where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
     group by c.oid, c.relname, c.relrowsecurity order by c.relname`,
  ],
  [
    'Constraints',
    `select format('%s: %s %s', conrelid::regclass, conname, pg_get_constraintdef(oid)) line from pg_constraint
     where connamespace = 'public'::regnamespace and contype <> 'n' order by conrelid::regclass::text, conname`,
  ],
  [
    'Indexes',
    `select indexdef line from pg_indexes where schemaname = 'public' order by tablename, indexname`,
  ],
  [
    'Policies',
    `select format('%s: %s for %s to %s%s%s', tablename, policyname, cmd, roles,
       ' using ' || qual, ' with check ' || with_check) line
     from pg_policies where schemaname = 'public' order by tablename, policyname`,
  ],
  [
    'Triggers',
    `select pg_get_triggerdef(t.oid) line from pg_trigger t join pg_class c on c.oid = t.tgrelid
     where c.relnamespace = 'public'::regnamespace and not tgisinternal order by c.relname, tgname`,
  ],
  [
    'Functions',
    `select pg_get_functiondef(p.oid) || coalesce(E'\\n-- may call: ' || array_to_string(p.proacl, ', '), '') line
     from pg_proc p where p.pronamespace = 'public'::regnamespace
       and not exists (select from pg_depend d where d.objid = p.oid and d.deptype = 'e') order by p.proname`,
  ],
  [
    'Grants',
    `select format('%s on %s to %s', string_agg(lower(privilege_type), ', ' order by privilege_type), table_name, grantee) line
     from information_schema.role_table_grants where table_schema = 'public' and grantee = 'asfound_service'
     group by table_name, grantee order by table_name`,
  ],
]

/** The schema of a database as text that changes exactly when the schema does. */
export async function describeSchema(client: pg.Client): Promise<string> {
  await client.query(`set search_path = public`)
  const { rows: users } = await client.query<{ name: string }>('select current_user::text as name')
  const sections: string[] = []
  for (const [title, query] of PARTS) {
    const { rows } = await client.query<{ line: string }>(query)
    sections.push(`-- ${title}\n\n${rows.map(({ line }) => line.trim()).join('\n\n')}`)
  }
  // Whoever owns the database of the tests is the same in no two places.
  return `${sections.join('\n\n\n').replaceAll(`${users[0]?.name}=`, 'owner=').replaceAll(`/${users[0]?.name}`, '/owner')}\n`
}
