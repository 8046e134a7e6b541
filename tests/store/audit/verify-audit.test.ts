import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { afterAll, describe, expect, test } from 'vitest'
import { entryHash } from '../../../src/store/audit/entry.ts'
import type { Head } from '../../../src/store/audit/head.ts'
import { readChain } from '../../../src/store/audit/read-entries.ts'
import { verifyAudit } from '../../../src/store/audit/verify-audit.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'

const { services, ask, people, url } = await testApp()
const here = '/v1/counties/quillback'
const parcel = await newParcel(services)
const at = `${here}/parcels/${parcel.number}`

const { body: entered } = await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permit1974 })
await ask('reviewer', {
  method: 'PUT',
  url: `${here}/permits/${entered.permit.id}`,
  headers: { 'if-match': '"r1"' },
  body: { record: { ...permit1974, bedrooms: 4 }, reason: 'The 3 is a 4.' },
})
const { body: draft } = await ask('firm', {
  method: 'POST',
  url: `${at}/findings`,
  body: inspectionThatDiffers,
})
const { body: handedIn } = await ask('firm', {
  method: 'POST',
  url: `${here}/findings/${draft.id}/submission`,
})
const { body: decided } = await ask('reviewer', {
  method: 'POST',
  url: `${here}/discrepancies/${handedIn.consequence.changes[0].discrepancy}/decisions`,
  headers: { 'if-match': '*' },
  body: { action: 'accept', reason: 'Seen on site.' },
})

const client = new pg.Client({ connectionString: url })
await client.connect()
afterAll(() => client.end())

const entriesOf = async (county: string) => {
  const all = []
  for await (const it of readChain(client, county)) all.push(it)
  return all
}

/** As the owner with every trigger off, as whoever has the database in hand could do it; undone afterwards. */
async function faultsAfter(tamper: string, known?: readonly Head[]): Promise<readonly string[]> {
  await client.query('begin')
  try {
    const { rows } = await client.query<{ name: string }>(
      `select format('alter table %s disable trigger user', c.oid::regclass) as name from pg_class c
       where relnamespace = 'public'::regnamespace and relkind = 'r' and relname <> 'migration'`,
    )
    for (const { name } of rows) await client.query(name)
    await client.query(tamper)
    for (const { name } of rows) await client.query(name.replace('disable', 'enable'))
    return (await verifyAudit(client, known)).faults
  } finally {
    await client.query('rollback')
  }
}

describe('what happened is in the chain', () => {
  test('each change of a record, in whose name, with the hash that the next change begins from', async () => {
    const entries = (await entriesOf('quillback')).map(({ entry }) => entry)
    const told = entries.map(({ act, kind, role }) => `${role} ${act} ${kind}`)
    expect(told.filter((it) => !it.endsWith('event'))).toEqual([
      'owner made county',
      'owner made admission',
      'owner made admission',
      'owner made admission',
      'owner made admission',
      'service made parcel',
      'reviewer made permit',
      'reviewer made permit_revision',
      'reviewer made reconciliation',
      'reviewer made parcel_status',
      'reviewer changed permit',
      'reviewer made permit_revision',
      'reviewer made reconciliation',
      'reviewer made discrepancy',
      'reviewer made discrepancy_change',
      'firm made findings',
      'firm made findings_revision',
      'firm changed findings',
      'firm made reconciliation',
      'firm made discrepancy',
      'firm made discrepancy',
      'firm made discrepancy',
      'firm changed discrepancy',
      'firm made discrepancy_change',
      'firm made discrepancy_change',
      'firm made discrepancy_change',
      'firm made discrepancy_change',
      'firm changed parcel_status',
      'reviewer made decision',
      'reviewer changed discrepancy',
      'reviewer changed parcel_status',
    ])
    const permit = entries.filter(({ kind }) => kind === 'permit')
    expect(permit.map(({ record, account }) => [record, account])).toEqual([
      [entered.permit.id, people.reviewer.account],
      [entered.permit.id, people.reviewer.account],
    ])
    expect(permit[0]!.beforeHash).toBeNull()
    expect(permit[1]!.beforeHash).toBe(permit[0]!.afterHash)
    expect(entries.find(({ kind }) => kind === 'decision')!.record).toBe(decided.decision.id)
  })

  test('and all of it holds', async () => {
    const report = await verifyAudit(client)
    expect(report.faults).toEqual([])
    expect(report.heads.map(({ county }) => county)).toEqual(['*', 'elsewhere', 'quillback'])
    expect(report.heads.at(-1)!.number).toBe((await entriesOf('quillback')).length)
  })

  test('nothing of a transaction that was undone', async () => {
    const before = (await entriesOf('quillback')).length
    const undone = transact(services.database, serviceIn('quillback'), async (tx) => {
      const row = {
        county: 'quillback',
        id: randomUUID(),
        kind: 'test',
        subject_kind: 'parcel',
        subject: parcel.id,
      }
      await tx
        .insertInto('event')
        .values({
          ...row,
          parcel: null,
          role: 'service',
          account: null,
          organization: null,
          before_hash: null,
          after_hash: null,
        })
        .execute()
      throw new Error('undone')
    })
    await expect(undone).rejects.toThrow('undone')
    expect(await entriesOf('quillback')).toHaveLength(before)
  })

  test('of many at once, in one chain without a gap or a fork', async () => {
    const before = (await entriesOf('quillback')).length
    const note = (county: string) =>
      transact(services.database, serviceIn(county), (tx) =>
        tx
          .insertInto('event')
          .values({
            county,
            id: randomUUID(),
            kind: 'test',
            subject_kind: 'parcel',
            subject: parcel.id,
            parcel: null,
            role: 'service',
            account: null,
            organization: null,
            before_hash: null,
            after_hash: null,
          })
          .execute(),
      )
    await Promise.all(Array.from({ length: 60 }, (_, i) => note(i % 3 === 0 ? 'elsewhere' : 'quillback')))
    expect(await entriesOf('quillback')).toHaveLength(before + 40)
    expect((await verifyAudit(client)).faults).toEqual([])
  })
})

describe('a planted change is found', () => {
  const permit = `'${entered.permit.id}'`
  const cases: readonly (readonly [string, string, RegExp])[] = [
    [
      'in an entry',
      `update audit set account = null where county = 'quillback' and number = 7`,
      /^entry 7 of quillback .* does not follow entry 6/,
    ],
    [
      'in the first entry',
      `update audit set role = 'reviewer' where county = 'quillback' and number = 1`,
      /^entry 1 of quillback .* does not begin the chain/,
    ],
    [
      'by an entry left out',
      `delete from audit where county = 'quillback' and number = 9`,
      /^entry 9 of quillback is missing: the next is entry 10/,
    ],
    [
      'by the last entries left out',
      `delete from audit where county = 'quillback' and number > 6`,
      /is in no entry of quillback: it was put there past the audit/,
    ],
    [
      'in the chain of accounts',
      `update audit set act = 'changed' where county = '*' and number = 2`,
      /^entry 2 of the service’s own chain/,
    ],
    [
      'in a permit',
      `update permit set record = jsonb_set(record, '{record,bedrooms}', '5') where id = ${permit}`,
      /^permit [0-9a-f-]{36} is not as entry \d+ of quillback left it/,
    ],
    [
      'in a revision of long ago',
      `update permit_revision set reason = 'None.' where permit = ${permit} and revision = 1`,
      /^permit_revision [0-9a-f-]{36}\/1 is not as entry \d+/,
    ],
    [
      'in findings that were submitted',
      `update findings set record = jsonb_set(record, '{remarks}', '"all is well"') where id = '${draft.id}'`,
      /^findings [0-9a-f-]{36} is not as entry \d+/,
    ],
    [
      'in a reconciliation',
      `update reconciliation set result = result || '{"x": 1}'`,
      /^reconciliation .* is not as/,
    ],
    ['in a decision', `update decision set reason = reason || ' '`, /^decision .* is not as/],
    ['in an event', `update event set account = null where role = 'reviewer'`, /^event .* is not as/],
    ['in an account', `update account set role = 'reviewer' where role = 'agent'`, /^account .* is not as/],
    ['by a token that was slipped in', tokenSlippedIn(), /^access_token .* was put there past the audit/],
    [
      'in where a parcel lies',
      `update parcel set address = '1 Other Rd' where id = '${parcel.id}'`,
      /^parcel .* is not as/,
    ],
    ['in where it stands', `update parcel_status set word = 'matches'`, /^parcel_status .* is not as/],
    [
      'in what its page says of that',
      `update parcel_status set body = jsonb_set(body, '{word}', '"matches"')`,
      /^parcel_status .* is not as/,
    ],
    ['in what differs', `update discrepancy set severity = 'note'`, /^discrepancy .* is not as/],
    ['in who was invited', invitationSlippedIn(), /^invitation .* was put there past the audit/],
    [
      'in the rules of long ago',
      `update rule_book set packs = packs || ' '`,
      /^rule_book .* holds other rules/,
    ],
    [
      'by a decision that is gone',
      `update discrepancy set decision = null; delete from decision`,
      /^decision [0-9a-f-]{36} is gone: by entry \d+ of quillback it should be there/,
    ],
  ]
  test.each(cases)('%s', async (_, tamper, says) => {
    const [first] = await faultsAfter(tamper)
    expect(first).toMatch(says)
  })

  test('and nothing else is blamed for it', async () => {
    expect(await faultsAfter(`update permit_revision set reason = 'None.' where revision = 1`)).toHaveLength(
      1,
    )
    expect(await faultsAfter('update permit set changed_at = now()')).toHaveLength(1)
  })

  function invitationSlippedIn(): string {
    return `insert into invitation (id, account, hash, made_at, expires_at)
      select '${randomUUID()}', id, sha256('x'), now(), now() + interval '1 day' from account limit 1`
  }

  function tokenSlippedIn(): string {
    return `insert into access_token (id, account, name, hash, counties)
      select '${randomUUID()}', id, 'slipped in', sha256('x'), '{quillback}' from account limit 1`
  }

  test('a watch that was switched off is told, even before anything was changed', async () => {
    await client.query('begin')
    await client.query('alter table decision disable trigger append_audit')
    expect((await verifyAudit(client)).faults).toEqual([
      'decision is not watched: its trigger append_audit is gone or switched off',
    ])
    await client.query('rollback')
  })

  test('a chain written anew, hashes and all, is found by a head that was noted before', async () => {
    const all = await entriesOf('quillback')
    const last = all.at(-1)!
    const noted = [{ county: 'quillback', number: last.entry.number, hash: last.hash }]
    let before = all[4]!.hash
    const rewriting = all.slice(5).map(({ entry }) => {
      const now = { ...entry, account: entry.number === 6 ? people.stranger.account : entry.account }
      before = entryHash(before, now)
      const account = now.account === null ? 'null' : `'${now.account}'`
      return `update audit set hash = '${before}', account = ${account} where county = 'quillback' and number = ${entry.number};`
    })
    expect(await faultsAfter(rewriting.join('\n'))).toEqual([])
    expect(await faultsAfter(rewriting.join('\n'), noted)).toEqual([
      expect.stringMatching(/^entry \d+ of quillback .* is another than was noted/),
    ])
    expect((await verifyAudit(client, noted)).faults).toEqual([])
  })
})
