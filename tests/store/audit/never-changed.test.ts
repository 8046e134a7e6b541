import pg from 'pg'
import { afterAll, describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'

/** What is on file is never changed in place: tried table by table, by the service's role and by the owner's own hand. */

const { services, ask, people, url } = await testApp()
const here = '/v1/counties/quillback'
const { number } = await newParcel(services)
const { body: entered } = await ask('reviewer', {
  method: 'POST',
  url: `${here}/parcels/${number}/permits`,
  body: permit1974,
})
const { body: draft } = await ask('firm', {
  method: 'POST',
  url: `${here}/parcels/${number}/findings`,
  body: inspectionThatDiffers,
})
const { body: handedIn } = await ask('firm', {
  method: 'POST',
  url: `${here}/findings/${draft.id}/submission`,
})
await ask('reviewer', {
  method: 'POST',
  url: `${here}/discrepancies/${handedIn.consequence.changes[0].discrepancy}/decisions`,
  headers: { 'if-match': '*' },
  body: { action: 'accept', reason: 'Seen on site.' },
})
const letter = await ask('agent', {
  method: 'POST',
  url: `${here}/parcels/${number}/letters`,
  body: { kind: 'status' },
})

const client = new pg.Client({ connectionString: url })
await client.connect()
afterAll(() => client.end())

/** Tries a statement in a transaction that is undone, as the owner or as the service acting for one of the people. */
async function attempt(
  statement: string,
  as?: { role: string; account: string; organization: string },
): Promise<string> {
  await client.query('begin')
  try {
    if (as) {
      await client.query(
        `select set_config('role', 'asfound_service', true), set_config('asfound.county', 'quillback', true),
           set_config('asfound.role', $1, true), set_config('asfound.account', $2, true),
           set_config('asfound.organization', $3, true)`,
        [as.role, as.account, as.organization],
      )
    }
    const { rowCount } = await client.query(statement)
    await client.query('set constraints all immediate')
    return `${rowCount} rows`
  } catch (fault) {
    return (fault as Error).message
  } finally {
    await client.query('rollback')
  }
}

const KEPT = [
  'audit',
  'decision',
  'discrepancy_change',
  'event',
  'findings_revision',
  'letter',
  'letter_withdrawal',
  'permit_revision',
  'reconciliation',
  'rule_book',
  'transcription',
  'access_event',
] as const

const { firm, reviewer } = people
const EVERYBODY = [firm, reviewer, { ...reviewer, role: 'service' }]

test('the letter that is tried below is there', () => {
  expect(letter.status).toBe(201)
})

describe.each(KEPT)('%s', (table) => {
  const column = table === 'rule_book' ? 'packs' : 'county'
  const update =
    table === 'access_event'
      ? 'update access_event set kind = kind'
      : `update ${table} set ${column} = ${column}`

  test.each(['update', 'delete', 'truncate'])('no %s by the service', async (how) => {
    const statement = { update, delete: `delete from ${table}`, truncate: `truncate ${table} cascade` }[how]!
    for (const who of EVERYBODY) expect(await attempt(statement, who)).toMatch(/^permission denied for table/)
  })

  test('no update, delete or truncate by the owner’s hand', async () => {
    for (const statement of [update, `delete from ${table}`])
      expect(await attempt(statement)).toBe(
        `what is in ${table} is never changed or removed; it is superseded`,
      )
    expect(await attempt(`truncate ${table} cascade`)).toMatch(/are never removed as a whole$/)
  })
})

describe('the audit', () => {
  const row = `'quillback', 99, now(), 'made', 'permit', 'x', 'owner', repeat('0', 64)`
  test.each([
    `insert into audit (county, number, at, act, kind, record, role, hash) values (${row})`,
    `select append_audit_entry('quillback', 'made', 'permit', 'x', null, repeat('0', 64))`,
    `select restate_records('permit')`,
    `call watch_records('street', 'key')`,
    'alter table permit disable trigger append_audit',
    'drop trigger append_audit on permit',
    'alter table audit disable trigger never_changed',
    `set session_replication_role = replica`,
  ])('is not written by the service: %s', async (statement) => {
    for (const who of EVERYBODY)
      expect(await attempt(statement, who)).toMatch(/^permission denied|^must be owner/)
  })

  test('is read by reviewers, of their county', async () => {
    const count = `select count(*)::int as n from audit having count(*) > 0`
    expect(await attempt(count, reviewer)).toBe('1 rows')
    expect(await attempt(count, firm)).toBe('0 rows')
  })
})

describe('findings that were submitted', () => {
  const where = `where id = '${draft.id}'`
  test.each([
    `update findings set record = '{}' ${where}`,
    `update findings set state = 'draft', submitted_at = null, submitted_by = null ${where}`,
    `delete from findings ${where}`,
  ])('%s', async (statement) => {
    expect(await attempt(statement)).toMatch(/submitted findings are never changed/)
    const asFirm = await attempt(statement, firm)
    expect(asFirm).toMatch(/submitted findings are never changed|permission denied/)
  })
})

describe('a permit', () => {
  const where = `where id = '${entered.permit.id}'`
  test('says what its newest revision says, whoever writes it', async () => {
    const forged = `update permit set record = jsonb_set(record, '{record,bedrooms}', '9') ${where}`
    for (const who of [reviewer, undefined])
      expect(await attempt(forged, who)).toBe(
        `permit ${entered.permit.id} says what none of its revisions does`,
      )
    expect(await attempt(`update permit set revision = 7 ${where}`, reviewer)).toMatch(
      /none of its revisions/,
    )
  })

  test('is never removed', async () => {
    expect(await attempt(`delete from permit ${where}`, reviewer)).toMatch(/permission denied/)
    expect(await attempt(`delete from permit ${where}`)).toMatch(/never changed or removed/)
  })
})

test('a paper is never exchanged for another', async () => {
  await client.query(
    `insert into document (county, id, content_hash, media_type, bytes, state, received_by)
     values ('quillback', gen_random_uuid(), repeat('a', 64), 'application/pdf', 1, 'received', $1)`,
    [reviewer.account],
  )
  for (const change of [
    `content_hash = repeat('b', 64)`,
    'bytes = 2',
    "received_at = now() + interval '1 day'",
  ])
    expect(await attempt(`update document set ${change}`, reviewer)).toMatch(
      /the paper of document .* is never another/,
    )
  expect(await attempt(`update document set state = 'reading'`, reviewer)).toBe('1 rows')
})
