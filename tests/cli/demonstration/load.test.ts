import { uuidv7 } from 'uuidv7'
import { describe, expect, test } from 'vitest'
import { addDays } from '../../../src/base/plain-date.ts'
import { must } from '../../../src/base/result.ts'
import { COUNTY, enrolCast, tokenFor } from '../../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../../src/cli/demonstration/load.ts'
import { moved } from '../../../src/cli/demonstration/moved.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { DEMONSTRATION_DAY } from '../../../src/cli/demonstration/story.ts'
import { loadRuleBook } from '../../../src/files/rule-packs.ts'
import type { OperationContext } from '../../../src/operations/context.ts'
import { findParcels } from '../../../src/operations/parcels/find-parcels.ts'
import { readStatus } from '../../../src/operations/parcels/read-status.ts'
import { findToken } from '../../../src/store/access/find-token.ts'
import { tokenHash } from '../../../src/store/access/token.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { discrepanciesOf } from '../../../src/store/discrepancies.ts'
import { systemsOf } from '../../../src/store/systems.ts'
import { isTarget, play } from '../../corpus/play.ts'
import { testDatabase } from '../../support/database.ts'

const book = must(await loadRuleBook())
const stories = readStories()
/** A year and some after the stories were written: what is of their present has to move with it. */
const TODAY = addDays(DEMONSTRATION_DAY, 500)

const { database } = await testDatabase()
/** Files, jobs and letters are not asked for by anything that the stories do. */
const context = {
  database,
  clock: () => new Date(`${TODAY}T15:00:00Z`),
  newId: uuidv7,
  book,
} as unknown as OperationContext
const cast = await enrolCast(database)

describe('the county, loaded through the operations', () => {
  test('is there once, however often it is loaded, and at once', async () => {
    const files = stories.flatMap(({ parcels }) => parcels)
    const loaded = await Promise.all([
      loadStories(context, cast, stories),
      loadStories(context, cast, stories),
    ])
    expect(loaded.toSorted((a, b) => a - b)).toEqual([0, files.length])
    expect(await enrolCast(database)).toEqual(cast)
  }, 120_000)

  test.each(
    stories.flatMap(({ slug, parcels }) =>
      parcels.map((file) => ({ slug, file, number: file.parcel.number })),
    ),
  )('$slug: $number answers as the story says', async ({ file, number }) => {
    const { parcel, status } = must(await readStatus(context, cast.agent, number))
    expect(status.word).toBe(file.expects.parcel ?? file.expects.status)
    const standing = await transact(database, serviceIn(COUNTY.id), async (tx) => {
      const label = file.system?.label
      const said = (await systemsOf(tx, COUNTY.id, parcel.id)).find((it) => label && it.label === label)
      return discrepanciesOf(tx, COUNTY.id, said?.id ?? parcel.id)
    })
    const now = standing.filter(({ state }) => state !== 'vanished')
    const told = (kind: string, severity: string, facet: string | null) =>
      `${severity} ${kind} ${facet ?? ''}`
    const expected = play(moved(file, 500), TODAY, book).reconciliation.discrepancies
    if (file.permits.length + file.findings.length > 0)
      expect(now.map(({ kind, severity, body }) => told(kind, severity, body.outcome.facet)).sort()).toEqual(
        expected.map(({ kind, severity, outcome }) => told(kind, severity, outcome.facet)).sort(),
      )
    for (const decision of file.decisions)
      expect(
        standing.filter(
          ({ kind, body, decision: made }) =>
            made && kind === decision.kind && (!decision.facet || body.outcome.facet === decision.facet),
        ),
      ).toHaveLength(1)
    expect(
      expected.filter((it) => file.expects.discrepancies.some((wanted) => isTarget(it, wanted))),
    ).toHaveLength(file.expects.discrepancies.length)
  })

  test('old numbers find what became of them', async () => {
    const numbers = async (query: string) =>
      (await findParcels(context, cast.agent, query, 10)).map(({ parcel }) => parcel.number)
    expect(await numbers('07-0299-0007')).toEqual(['07-0301-0044'])
    expect((await numbers('7 450 3')).toSorted()).toEqual(['07-0450-0011', '07-0450-0012'])
    expect(await numbers('07-0455-0007')).toEqual(['07-0455-0002'])
  })

  test('a token is good for the county, for a while, and only its hash is kept', async () => {
    const token = await tokenFor(database, cast.firms.upland, context.clock())
    const found = await findToken(database, tokenHash(token))
    expect(found).toBeDefined()
    expect(found!.caller).toMatchObject({ role: 'firm', counties: [COUNTY.id] })
    expect(found!.expiresAt!.getTime()).toBeGreaterThan(context.clock().getTime())
  })
})
