import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import { testDatabase } from '../../support/database.ts'
import { describeSchema } from '../../support/describe-schema.ts'

const { url } = await testDatabase()
const client = new pg.Client({ connectionString: url })
await client.connect()
afterAll(() => client.end())

const names = async (query: string): Promise<readonly string[]> =>
  (await client.query<{ name: string }>(query)).rows.map(({ name }) => name)

/** Where the county need not come first: who may use the service at all, the law, the keys of letters, and the record of migrations. */
const WITHOUT_COUNTY = [
  'access_event',
  'access_token',
  'account',
  'audit_break',
  'audit_noting',
  'county',
  'invitation',
  'migration',
  'organization',
  'original_fault',
  'original_round',
  'outside_identity',
  'quota_use',
  'recovery_code',
  'rule_book',
  'second_step',
  'session',
  'sign_in',
  'signing_key',
  'throttle',
]

test('the schema is the one that was looked at when it last changed', async () => {
  await expect(await describeSchema(client)).toMatchFileSnapshot('schema.sql')
})

test('every table of a county begins its primary key, and every index and unique constraint, with the county', async () => {
  const wrong = await names(`
    select distinct c.relname || ': ' || i.indexrelid::regclass::text as name
    from pg_index i join pg_class c on c.oid = i.indrelid
    join pg_attribute a on a.attrelid = c.oid and a.attnum = i.indkey[0]
    where c.relnamespace = 'public'::regnamespace and a.attname <> 'county'
      and c.relname <> all ('{${WITHOUT_COUNTY.join()}}') order by 1`)
  // Old answers are swept by age over all counties; an organization asks where it is admitted; whoever checks a letter by its code knows no county.
  expect(wrong).toEqual([
    'admission: admission_by_organization',
    'idempotency_key: idempotency_key_by_age',
    'letter: letter_by_code',
  ])
})

test('row-level security is on in every table the service may touch', async () => {
  const open = await names(`
    select distinct c.relname as name from pg_class c
    join information_schema.role_table_grants g on g.table_name = c.relname and g.grantee = 'asfound_service'
    where c.relnamespace = 'public'::regnamespace and not c.relrowsecurity`)
  expect(open).toEqual([])
})

test('every foreign key between tables of a county carries the county', async () => {
  const wrong = await names(`
    select conname as name from pg_constraint k
    where contype = 'f' and connamespace = 'public'::regnamespace
      and confrelid::regclass::text <> all ('{${WITHOUT_COUNTY.join()}}')
      and not exists (select from pg_attribute a where a.attrelid = k.conrelid and a.attnum = k.conkey[1] and a.attname = 'county')`)
  expect(wrong).toEqual([])
})

test('what is never changed can’t be: no update or delete for the service', async () => {
  const changeable = await names(`
    select distinct table_name as name from information_schema.role_table_grants
    where grantee = 'asfound_service' and privilege_type in ('UPDATE', 'DELETE', 'TRUNCATE') order by 1`)
  for (const kept of [
    'permit_revision',
    'findings_revision',
    'transcription',
    'reconciliation',
    'discrepancy_change',
    'decision',
    'event',
    'idempotency_key',
    'letter',
    'letter_withdrawal',
  ]) {
    expect(changeable).not.toContain(kept)
  }
})

test('functions that run as the owner fix their search path, and not everybody may call them', async () => {
  const loose = await names(`
    select p.proname as name from pg_proc p
    where p.pronamespace = 'public'::regnamespace and p.prosecdef
      and (p.proconfig is null or not exists (select from unnest(p.proconfig) s where s like 'search_path=%')
           or (p.prorettype <> 'trigger'::regtype and has_function_privilege('public', p.oid, 'execute')))`)
  expect(loose).toEqual([])
})
