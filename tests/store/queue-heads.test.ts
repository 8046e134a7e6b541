import { randomUUID } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../src/reconcile/kinds.ts'
import { DISCREPANCY_STATES } from '../../src/reconcile/projection.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import { discrepancyQueue, queueKeyOf } from '../../src/store/discrepancies.ts'
import type { QueueFilter, QueueKey } from '../../src/store/queue-heads.ts'
import { testDatabase } from '../support/database.ts'
import { COUNTY, enrolPeople } from '../support/people.ts'

const { database } = await testDatabase()
const people = await enrolPeople(database)
const KINDS = DISCREPANCY_KINDS.slice(0, 4)
const day = (n: number) => new Date(Date.UTC(2026, 0, 1 + n))

/** Two hundred differences of every sort, on one parcel, many raised in the same instant. */
const [parcel, reconciliation] = [randomUUID(), randomUUID()]
await transact(database, serviceIn(COUNTY), async (tx) => {
  await tx
    .insertInto('parcel')
    .values({ county: COUNTY, id: parcel, number: '07-0412-0031', address: null, retired_on: null })
    .execute()
  const made = {
    county: COUNTY,
    id: reconciliation,
    parcel,
    findings: null,
    organization: null,
    as_built_on: '2026-01-01',
  }
  const hashes = { input_hash: 'x', engine: 'x', result_hash: 'x', occasion: 'asked-for' }
  await tx
    .insertInto('reconciliation')
    .values({ ...made, ...hashes, inputs: '{}', result: '{}' })
    .execute()
  for (let n = 0; n < 200; n++) {
    await tx
      .insertInto('discrepancy')
      .values({
        county: COUNTY,
        id: randomUUID(),
        parcel,
        kind: KINDS[n % 4]!,
        subject: String(n),
        organization: n % 5 === 0 ? people.firm.organization : null,
        severity: SEVERITIES[Math.floor(n / 4) % 3]!,
        state: DISCREPANCY_STATES[Math.floor(n / 12) % 4]!,
        evidence_hash: 'x',
        reconciliation,
        body: '{}',
        says: 'It differs.',
        decision: null,
        raised_at: day(n % 7),
        changed_at: day(n % 30),
      })
      .execute()
  }
})

const some = <T>(list: readonly T[]) => fc.subarray([...list])
const filters = fc.record<QueueFilter>({
  states: some(DISCREPANCY_STATES),
  kinds: some(KINDS),
  severities: some(SEVERITIES),
  since: fc.option(fc.nat({ max: 30 }).map(day), { nil: undefined }),
  parcel: fc.constantFrom(undefined, parcel),
})

test('pages of the queue, put together, are what a plain look at every row gives', async () => {
  await fc.assert(
    fc.asyncProperty(
      filters,
      fc.integer({ min: 1, max: 60 }),
      fc.constantFrom('reviewer', 'firm' as const),
      async (filter, most, who) => {
        await transact(database, people[who as 'reviewer' | 'firm'], async (tx) => {
          let plain = tx.selectFrom('discrepancy').select('id').where('county', '=', COUNTY)
          if (filter.states.length > 0) plain = plain.where('state', 'in', filter.states)
          if (filter.kinds.length > 0) plain = plain.where('kind', 'in', filter.kinds)
          if (filter.severities.length > 0) plain = plain.where('severity', 'in', filter.severities)
          if (filter.since) plain = plain.where('changed_at', '>=', filter.since)
          const wanted = await plain.orderBy('severity_rank').orderBy('raised_at').orderBy('id').execute()
          const found: string[] = []
          for (let after: QueueKey | undefined; ; ) {
            const page = await discrepancyQueue(tx, COUNTY, filter, after, most)
            found.push(...page.map(({ id }) => id))
            if (page.length < most) break
            after = queueKeyOf(page.at(-1)!)
          }
          expect(found).toEqual(wanted.map(({ id }) => id))
        })
      },
    ),
    { numRuns: 60 },
  )
})
