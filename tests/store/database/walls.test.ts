import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { type Actor, asService } from '../../../src/store/database/actor.ts'
import type { Tx } from '../../../src/store/database/database.ts'
import type { Tables } from '../../../src/store/database/tables.ts'
import { transact, withoutCounty } from '../../../src/store/database/transact.ts'
import { testDatabase } from '../../support/database.ts'
import { enrolPeople } from '../../support/people.ts'

/** The second wall: what the database lets each of them see and write even where an operation forgets to ask. */

const { database } = await testDatabase()
const people = await enrolPeople(database)
const { reviewer, firm, rival, agent, stranger } = people
const county = 'quillback'
const [parcel, permit, document, discrepancy, reconciliation] = Array.from({ length: 5 }, () => randomUUID())
const hash = 'a'.repeat(64)
const findingsOf = new Map(
  [firm, rival].map((who) => [who, { draft: randomUUID(), submitted: randomUUID() }]),
)

await transact(database, asService(reviewer), async (tx) => {
  const insert = <T extends keyof Tables>(table: T, row: object) =>
    tx
      .insertInto(table)
      .values({ county, ...row } as never)
      .execute()
  const by = reviewer.account
  await insert('parcel', {
    id: parcel,
    number: '07-0412-0031',
    address: '412 Mill Pond Road',
    retired_on: null,
  })
  await insert('parcel_alias', { parcel, number: 'old', kind: 'renumbered', changed_on: null, note: null })
  await insert('parcel_status', {
    parcel,
    word: 'matches',
    good_until: null,
    derived_at: new Date(),
    body: '{}',
  })
  await insert('document', {
    id: document,
    parcel,
    content_hash: hash,
    media_type: 'application/pdf',
    bytes: 1,
    state: 'received',
    received_by: by,
  })
  await insert('document_page', { document, number: 1, width: 1, height: 1, text: '', words: '[]' })
  await insert('transcription', { id: randomUUID(), document, body: '{}', confirmed_by: by })
  await insert('permit', { id: permit, parcel, kind: 'new', record: '{}' })
  await insert('permit_revision', { permit, revision: 1, record: '{}', record_hash: hash, recorded_by: by })
  for (const [who, ids] of findingsOf) {
    const row = { parcel, organization: who.organization, record: '{}', created_by: who.account }
    const done = { state: 'submitted', submitted_by: who.account, submitted_at: new Date() }
    await insert('findings', { ...row, id: ids.draft, state: 'draft' })
    await insert('findings', { ...row, ...done, id: ids.submitted })
    for (const findings of Object.values(ids)) {
      const revision = { findings, revision: 1, record: '{}', record_hash: hash, recorded_by: who.account }
      await insert('findings_revision', revision)
    }
  }
  const from = { parcel, organization: firm.organization }
  await insert('reconciliation', {
    ...from,
    id: reconciliation,
    findings: findingsOf.get(firm)?.submitted,
    as_built_on: '2026-01-01',
    inputs: '{}',
    input_hash: hash,
    engine: '1',
    result: '{}',
    result_hash: hash,
    occasion: 'test',
  })
  await insert('discrepancy', {
    ...from,
    id: discrepancy,
    kind: 'level-low',
    subject: 'tank 1',
    severity: 'action',
    state: 'open',
    evidence_hash: hash,
    reconciliation,
    body: '{}',
    raised_at: new Date(),
    changed_at: new Date(),
    says: 'It differs.',
  })
  await insert('discrepancy_change', {
    id: randomUUID(),
    parcel,
    discrepancy,
    reconciliation,
    change: 'appeared',
  })
  await insert('job', { id: randomUUID(), kind: 'test', state: 'waiting', organization: firm.organization })
  await insert('event', {
    id: randomUUID(),
    kind: 'test',
    subject_kind: 'parcel',
    subject: parcel,
    role: 'service',
  })
})
await transact(database, reviewer, (tx) =>
  tx
    .insertInto('decision')
    .values({
      county,
      id: randomUUID(),
      discrepancy: discrepancy!,
      parcel: parcel!,
      ...decisionBy(reviewer.account),
    })
    .execute(),
)
await transact(database, firm, (tx) => keepAnswer(tx, firm.account))
for (const [who, ids] of findingsOf) {
  await transact(database, who, async (tx) => {
    for (const findings of Object.values(ids)) await insertPhoto(tx, findings, who.account)
  })
}

function insertPhoto(tx: Tx, findings: string, account: string) {
  const picture = { content_hash: hash, shown_hash: hash, media_type: 'image/jpeg' as const, bytes: 1 }
  const shape = { width: 1, height: 1, orientation: 1, taken_at: null, lat: null, lon: null, radius_ft: null }
  return tx
    .insertInto('photo')
    .values({
      county,
      id: randomUUID(),
      findings,
      component: null,
      ...picture,
      ...shape,
      added_by: account,
    })
    .execute()
}

function decisionBy(account: string) {
  return {
    action: 'accept',
    reason: 'seen on site',
    evidence_hash: hash,
    supersedes: null,
    decided_by: account,
  }
}

function keepAnswer(tx: Tx, account: string) {
  const row = { county, account, key: 'k', request_hash: hash, status: 201, headers: '{}', body: '{}' }
  return tx.insertInto('idempotency_key').values(row).execute()
}

/** How many rows each of them sees: reviewer, firm whose findings they are, another firm, agent, the service. */
const SEEN: {
  readonly [T in Exclude<
    keyof Tables,
    'access_token' | 'street' | 'county' | 'organization' | 'account'
  >]?: readonly number[]
} = {
  parcel: [1, 1, 1, 1, 1],
  parcel_alias: [1, 1, 1, 1, 1],
  parcel_status: [1, 1, 1, 1, 1],
  document: [1, 0, 0, 0, 1],
  document_page: [1, 0, 0, 0, 1],
  transcription: [1, 0, 0, 0, 1],
  permit: [1, 1, 1, 0, 1],
  permit_revision: [1, 1, 1, 0, 1],
  findings: [2, 2, 2, 0, 4],
  findings_revision: [2, 2, 2, 0, 4],
  photo: [2, 2, 2, 0, 4],
  reconciliation: [1, 1, 0, 0, 1],
  discrepancy: [1, 1, 0, 0, 1],
  discrepancy_change: [1, 1, 0, 0, 1],
  decision: [1, 1, 0, 0, 1],
  job: [1, 1, 0, 0, 1],
  event: [1, 0, 0, 0, 1],
  idempotency_key: [0, 1, 0, 0, 0],
}

const countIn = (table: keyof Tables, actor: Actor) =>
  transact(database, actor, async (tx) => (await tx.selectFrom(table).selectAll().execute()).length)

describe('who sees what', () => {
  test.each(Object.entries(SEEN))('%s', async (table, expected) => {
    const seen = []
    for (const who of [reviewer, firm, rival, agent, asService(reviewer)]) {
      seen.push(await countIn(table as keyof Tables, who))
    }
    expect(seen).toEqual(expected)
  })

  test('another county, and nobody, see none of it', async () => {
    for (const table of Object.keys(SEEN) as (keyof Tables)[]) {
      const who = { ...stranger, county: 'elsewhere' }
      expect([table, await countIn(table, who), await countIn(table, asService(who))]).toEqual([table, 0, 0])
      const rows = await withoutCounty(database, (tx) => tx.selectFrom(table).selectAll().execute())
      expect([table, rows.length]).toEqual([table, 0])
    }
  })

  test('nobody reads tokens, and rivals do not see each other’s names', async () => {
    await expect(countIn('access_token', reviewer)).rejects.toThrow(/permission denied/)
    expect(await countIn('organization', firm)).toBe(1)
    expect(await countIn('account', agent)).toBe(1)
  })
})

describe('who may write', () => {
  const attempts: readonly (readonly [string, Actor, (tx: Tx) => Promise<unknown>])[] = [
    ['a firm enters a permit', firm, (tx) => tx.insertInto('permit').values(newPermit()).execute()],
    ['an agent enters a permit', agent, (tx) => tx.insertInto('permit').values(newPermit()).execute()],
    ['a firm decides', firm, (tx) => tx.insertInto('decision').values(newDecision(firm.account)).execute()],
    [
      'a firm writes findings for another',
      firm,
      (tx) => tx.insertInto('findings').values(newFindings()).execute(),
    ],
    [
      'a reviewer writes findings',
      reviewer,
      (tx) => tx.insertInto('findings').values(newFindings()).execute(),
    ],
    [
      'a firm adds a photo to another’s findings',
      firm,
      (tx) => insertPhoto(tx, findingsOf.get(rival)!.submitted, firm.account),
    ],
    [
      'a reviewer adds a photo',
      reviewer,
      (tx) => insertPhoto(tx, findingsOf.get(firm)!.submitted, reviewer.account),
    ],
    [
      'a reviewer writes a reconciliation',
      reviewer,
      (tx) => tx.insertInto('discrepancy_change').values(newChange()).execute(),
    ],
  ]
  test.each(attempts)('not: %s', async (_, actor, attempt) => {
    await expect(transact(database, actor, attempt)).rejects.toThrow(/row-level security/)
  })

  test('nothing: an update of what the actor does not see changes no row', async () => {
    const changed = await transact(database, firm, (tx) =>
      tx.updateTable('permit').set({ number: 'forged' }).where('county', '=', county).executeTakeFirst(),
    )
    expect(changed.numUpdatedRows).toBe(0n)
  })

  test('nothing: a photo of findings that were submitted is not taken away, nor another’s', async () => {
    const { draft, submitted } = findingsOf.get(firm)!
    const taken = async (who: Actor, findings: string): Promise<bigint> =>
      transact(database, who, async (tx) => {
        const gone = await tx.deleteFrom('photo').where('findings', '=', findings).executeTakeFirst()
        return gone.numDeletedRows
      })
    expect([
      await taken(firm, submitted),
      await taken(rival, draft),
      await taken(reviewer, submitted),
    ]).toEqual([0n, 0n, 0n])
    expect(await taken(firm, draft)).toBe(1n)
  })

  test('not: anybody changes findings that were submitted', async () => {
    const id = findingsOf.get(firm)!.submitted
    for (const who of [firm, asService(firm)]) {
      const changing = transact(database, who, (tx) =>
        tx.updateTable('findings').set({ record: '{"changed":true}' }).where('id', '=', id).execute(),
      )
      await expect(changing).rejects.toThrow(/never changed/)
    }
  })

  test('once: a second first decision, or a second one in the place of the same, is refused', async () => {
    const again = transact(database, reviewer, (tx) =>
      tx.insertInto('decision').values(newDecision(reviewer.account)).execute(),
    )
    await expect(again).rejects.toThrow(/decision_first/)
  })

  const ids = () => ({ county, id: randomUUID(), parcel: parcel! })
  const newPermit = () => ({ ...ids(), kind: 'new' as const, record: '{}' })
  const newDecision = (account: string) => ({ ...ids(), discrepancy: discrepancy!, ...decisionBy(account) })
  const newChange = () => ({
    ...ids(),
    discrepancy: discrepancy!,
    reconciliation: reconciliation!,
    change: 'changed' as const,
  })
  const newFindings = () => ({
    ...ids(),
    organization: rival.organization,
    state: 'draft' as const,
    record: '{}',
    created_by: rival.account,
  })
})
