import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import { testDatabase } from '../../support/database.ts'

/** What a database that is spread by county needs: no row of a county is looked at without it. */

const { url } = await testDatabase()
const client = new pg.Client({ connectionString: url })
await client.connect()
afterAll(() => client.end())

type Policy = { readonly what: string; readonly rule: string }

test('every policy of a table of a county compares the county with the one that is asking', async () => {
  const { rows } = await client.query<Policy>(`
    select p.tablename || ': ' || p.policyname as what, coalesce(p.qual, '') || ' ' || coalesce(p.with_check, '') as rule
    from pg_policies p
    join pg_attribute a on a.attrelid = format('%I.%I', p.schemaname, p.tablename)::regclass and a.attname = 'county'
    where p.schemaname = 'public' and not a.attisdropped`)
  expect(rows.length).toBeGreaterThan(30)
  const loose = rows.filter(({ rule }) => !/county = asking_county\(\)/.test(rule)).map(({ what }) => what)
  // An organization sees where it is admitted: that is how it learns which counties it may ask for. Nobody's county yet: the door.
  expect(loose.filter((what) => !/^(admission|invitation|access_event|throttle): /.test(what))).toEqual([])
})

test('the rule above would see a policy that does not', () => {
  expect(/county = asking_county\(\)/.test('(organization = asking_organization())')).toBe(false)
})
