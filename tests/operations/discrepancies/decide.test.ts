import { beforeEach, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { type DecisionAsked, decide } from '../../../src/operations/discrepancies/decide.ts'
import { readDiscrepancy } from '../../../src/operations/discrepancies/read-discrepancy.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { readAsBuilt } from '../../../src/operations/parcels/read-as-built.ts'
import { correctPermit } from '../../../src/operations/permits/correct-permit.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { statedValue } from '../../../src/records/claim.ts'
import { testApp } from '../../support/app.ts'
import {
  findingsRecord,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  permitRecord,
  standingClock,
} from '../../support/quillback.ts'

const { clock, set } = standingClock('2026-11-02T15:00:00Z')
const { services: context, people } = await testApp({ clock })
const { reviewer, firm } = people

let parcel: string
let permit: string
let tank: string

/** A parcel whose tank measures smaller than its record. */
beforeEach(async () => {
  set('2026-11-02T15:00:00Z')
  parcel = (await newParcel(context)).id
  permit = must(await enterPermit(context, reviewer, parcel, permitRecord(permit1974))).permit.id
  const { changes } = await inspection()
  tank = changes.find(({ body }) => body.kind === 'capacity-below-record')!.discrepancy
})

async function inspection() {
  const draft = must(await draftFindings(context, firm, parcel, findingsRecord(inspectionThatDiffers)))
  return must(await submitFindings(context, firm, draft.id, undefined)).reconciled
}

const plain: Omit<DecisionAsked, 'discrepancy'> = {
  version: undefined,
  action: 'accept',
  reason: 'The card rounded up.',
  asks: null,
  correction: null,
  supersedes: null,
}
const deciding = (over: Partial<DecisionAsked> = {}) =>
  decide(context, reviewer, { ...plain, discrepancy: tank, ...over })
const now = async () => must(await readDiscrepancy(context, reviewer, tank))

const correction = (over: Partial<NonNullable<DecisionAsked['correction']>> = {}) => ({
  action: 'correct-record' as const,
  correction: { permit, component: `${permit}/tank`, field: 'capacity' as const, value: '720 gal', ...over },
})

describe('a correction of the record', () => {
  test('changes the as-built on every day the permit is part of, and the difference vanishes', async () => {
    const { reconciled, discrepancy } = must(await deciding(correction()))
    expect(reconciled?.changes.map(({ change, body }) => `${change} ${body.kind}`)).toContain(
      'vanished capacity-below-record',
    )
    expect(discrepancy.state).toBe('vanished')
    const { asBuilt } = must(await readAsBuilt(context, firm, parcel, undefined))
    const { capacity } = asBuilt.components[0]!.measures
    expect(statedValue(capacity)).toMatchObject({ gal: 720, asWritten: '720 gal' })
    expect(capacity).toMatchObject({ origin: { source: { kind: 'correction' } } })
  })

  test('is undone by a decision that supersedes it: the difference is back, and decided', async () => {
    const { decision } = must(await deciding(correction()))
    set('2026-11-02T16:00:00Z')
    const { discrepancy, reconciled } = must(
      await deciding({ action: 'accept', reason: 'The card was right.', supersedes: decision.id }),
    )
    expect(reconciled?.changes.map(({ change, body }) => `${change} ${body.kind}`)).toContain(
      'returned capacity-below-record',
    )
    expect(discrepancy.state).toBe('decided')
    expect(
      (await now()).decisions.map(({ action, supersededBy }) => [action, supersededBy !== null]),
    ).toEqual([
      ['correct-record', true],
      ['accept', false],
    ])
  })

  test('that does not settle the matter says that its ground has moved', async () => {
    const { discrepancy } = must(await deciding(correction({ value: '900 gal' })))
    expect(discrepancy.state).toBe('ground-moved')
  })

  test.each([
    ['another parcel’s permit', { permit: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11' }, '/correction/permit'],
    ['no such component', { component: 'nothing' }, '/correction/component'],
    [
      'a component for a value of the whole',
      { field: 'bedrooms' as const, value: 3 },
      '/correction/component',
    ],
    ['a value that can’t be read', { value: '1O00' }, '/correction/value'],
    ['no value', { value: null }, '/correction/value'],
  ])('is refused with a pointer: %s', async (_, over, pointer) => {
    const refused = await deciding(correction(over))
    expect(refused).toMatchObject({ ok: false, error: { why: 'invalid', issues: [{ pointer }] } })
    expect((await now()).decisions).toEqual([])
  })

  test('tells every fault at once', async () => {
    const refused = await deciding(correction({ permit: 'none', component: 'none', value: '' }))
    expect(refused).toMatchObject({
      error: {
        issues: [
          { pointer: '/correction/permit' },
          { pointer: '/correction/component' },
          { pointer: '/correction/value' },
        ],
      },
    })
  })
})

describe('a decision', () => {
  test('stays when the permit is corrected elsewhere, and its ground moves when the value it rests on is', async () => {
    must(await deciding())
    const record = permitRecord(permit1974)
    const reason = 'Read again.'
    must(
      await correctPermit(context, reviewer, {
        id: permit,
        version: 1,
        record: { ...record, remarks: 'wet in spring' },
        reason,
      }),
    )
    expect((await now()).discrepancy.state).toBe('decided')
    const components = permitRecord({
      ...permit1974,
      components: permit1974.components!.map((it) =>
        it.tag === 'tank' ? { ...it, capacity: '1,200 gal' } : it,
      ),
    }).components
    must(
      await correctPermit(context, reviewer, {
        id: permit,
        version: 2,
        record: { ...record, components },
        reason,
      }),
    )
    const { discrepancy, changes, decisions } = await now()
    expect(discrepancy.state).toBe('ground-moved')
    expect(changes.at(-1)).toMatchObject({ change: 'changed', body: { state: 'ground-moved' } })
    expect(decisions).toHaveLength(1)
  })

  test('that asks for a measurement is answered by the next findings', async () => {
    set('2026-11-02T16:00:00Z')
    must(await deciding({ action: 'ask-remeasurement' }))
    expect((await now()).discrepancy.state).toBe('decided')
    set('2026-11-03T16:00:00Z')
    await inspection()
    expect((await now()).discrepancy.state).toBe('ground-moved')
  })

  test('is only replaced knowingly', async () => {
    const { decision } = must(await deciding())
    expect(await deciding()).toMatchObject({ error: { why: 'conflict' } })
    const wrong = await deciding({ supersedes: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11' })
    expect(wrong).toMatchObject({ error: { why: 'conflict' } })
    must(await deciding({ action: 'require-repair', supersedes: decision.id }))
    expect((await now()).decisions.map(({ action }) => action)).toEqual(['accept', 'require-repair'])
  })

  test('on what no longer stands is refused', async () => {
    must(await deciding(correction()))
    const { discrepancy } = await now()
    expect(discrepancy.state).toBe('vanished')
    expect(await deciding()).toMatchObject({ error: { why: 'conflict' } })
  })

  test('on a version that has moved on is refused', async () => {
    must(await deciding({ version: 1 }))
    expect(await deciding({ version: 1 })).toMatchObject({ error: { why: 'stale' } })
  })

  test('of two at once one is made and the other refused', async () => {
    const both = await Promise.all([
      deciding({ version: 1, reason: 'One.' }),
      deciding({ version: 1, action: 'require-repair', reason: 'Other.' }),
    ])
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true])
    expect(both.find(({ ok }) => !ok)).toMatchObject({ error: { why: 'stale' } })
    expect((await now()).decisions).toHaveLength(1)
  })
})

describe('what an inspection left out', () => {
  /** An inspection that says why it opened nothing. */
  async function leftOut() {
    const { id } = await newParcel(context)
    must(await enterPermit(context, reviewer, id, permitRecord(permit1974)))
    const tank = { label: 'tank', kind: 'tank', outcome: 'found', opened: 'not-opened' } as const
    const record = findingsRecord({
      inspectedOn: '2026-10-12',
      ground: 'dry',
      backup: false,
      components: [
        { ...tank, notOpenedBecause: 'paved-over' },
        { label: 'pit', kind: 'seepage-pit', outcome: 'found' },
      ],
    })
    const draft = must(await draftFindings(context, firm, id, record))
    const { reconciled } = must(await submitFindings(context, firm, draft.id, undefined))
    return reconciled.changes.find(({ body }) => body.kind === 'inspection-incomplete')!.discrepancy
  }

  test('is waived for a reason of the list, and not simply accepted', async () => {
    const discrepancy = await leftOut()
    expect(await deciding({ discrepancy, action: 'accept' })).toMatchObject({ error: { why: 'conflict' } })
    const { decision } = must(
      await deciding({ discrepancy, action: 'waive-no-way-in', reason: 'The porch.' }),
    )
    expect(decision.action).toBe('waive-no-way-in')
  })

  test('and nothing else is waived', async () => {
    expect(await deciding({ action: 'waive-seen-before' })).toMatchObject({ error: { why: 'conflict' } })
  })
})
