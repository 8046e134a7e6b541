import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import { WATCHED } from '../../../src/store/audit/watched.ts'
import { testDatabase } from '../../support/database.ts'

const { url } = await testDatabase()
const client = new pg.Client({ connectionString: url })
await client.connect()
afterAll(() => client.end())

/** Tables that the audit does not watch, each with the reason. */
const UNWATCHED: Readonly<Record<string, string>> = {
  audit: 'is the audit: its entries hold each other',
  audit_noting: 'when the audit was last noted outside',
  audit_break: 'what a restore found already broken; never changed',
  form_witness: 'worked out from transcriptions, which are watched; what comes of it is an event',
  idempotency_key: 'answers to requests, kept for a while; what they were made of is watched',
  import_rejection: 'what was not taken; the file itself is an original, known by its hash',
  job: 'how far work is; what it came to rests on what is watched, and can be asked for anew',
  letter_counter: 'numbers given to letters, which are watched',
  migration: 'the program’s own',
  original_fault: 'files that are looked at again each week',
  original_round: 'when files were last looked at',
  quota_use: 'what was sent on a day, counted for a while',
  reading_tally: 'worked out from transcriptions, which are watched',
  recovery_code: 'spent at once; each use is an access event',
  rerun: 'how far work is',
  rerun_parcel: 'how far work is',
  rule_book: 'known by the hash of its text, which every reconciliation names and the verification compares',
  session: 'comes and goes; each is an access event',
  street: 'leads a search to parcels, which are watched; nothing of it is shown',
  throttle: 'guesses, counted for a while',
}

const names = async (query: string) =>
  (await client.query<{ name: string }>(query)).rows.map(({ name }) => name)

test('every table is watched, or there is a reason why not', async () => {
  const tables = await names(
    `select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r' order by 1`,
  )
  expect([...WATCHED, ...Object.keys(UNWATCHED)].sort()).toEqual(tables)
})

test('every watched table has its trigger, switched on, and can’t be emptied', async () => {
  expect(await names('select kind as name from watched_table where switched_on order by 1')).toEqual([
    ...WATCHED,
  ])
  const emptied = await names(`
    select c.relname as name from pg_trigger t join pg_class c on c.oid = t.tgrelid
    where t.tgname = 'never_emptied' and t.tgenabled = 'O' order by 1`)
  expect(emptied).toEqual(expect.arrayContaining([...WATCHED]))
})

test('an entry names a record by the whole of its key', async () => {
  const { rows } = await client.query<{ kind: string; key: string[]; primary: string[] }>(`
    select kind, key, (
      select array_agg(a.attname::text order by a.attname)
      from pg_index i join pg_attribute a on a.attrelid = i.indrelid and a.attnum = any (i.indkey)
      where i.indrelid = watched and i.indisprimary and a.attname <> 'county') as primary
    from watched_table`)
  for (const { kind, key, primary } of rows) expect([kind, [...key].sort()]).toEqual([kind, primary])
})
