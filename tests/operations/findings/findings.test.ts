import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { amendFindings } from '../../../src/operations/findings/amend-findings.ts'
import { changeFindings } from '../../../src/operations/findings/change-findings.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { listFindings, readFindings } from '../../../src/operations/findings/read-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { readNewestReconciliation } from '../../../src/operations/reconciliation/read-reconciliation.ts'
import type { FindingsEntry } from '../../../src/reading/entry/findings.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import type { Enrolled } from '../../support/people.ts'
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
const { reviewer, firm, rival } = people

const record = (inspectedOn = '2026-10-12') => findingsRecord({ ...inspectionThatDiffers, inspectedOn })
const draft = async (parcel: string, who: Enrolled = firm, inspectedOn?: string) =>
  must(await draftFindings(context, who, parcel, record(inspectedOn)))
const handIn = async (parcel: string, who: Enrolled = firm, inspectedOn?: string) => {
  const { id } = await draft(parcel, who, inspectedOn)
  return must(await submitFindings(context, who, id, undefined)).findings
}
const compared = async (parcel: string) =>
  must(await readNewestReconciliation(context, reviewer, parcel)).reconciliation.findings

describe('a draft', () => {
  test('is its firm’s alone, and changed at will', async () => {
    const { id: parcel } = await newParcel(context)
    const { id } = await draft(parcel)
    const changed = must(
      await changeFindings(context, firm, { id, version: 1, record: { ...record(), notes: 'wet' } }),
    )
    expect([changed.revision, changed.record.notes]).toEqual([2, 'wet'])
    expect(await changeFindings(context, firm, { id, version: 1, record: record() })).toMatchObject({
      error: { why: 'stale' },
    })
    for (const other of [reviewer, rival]) {
      expect(await readFindings(context, other, id)).toMatchObject({ error: { why: 'not-found' } })
      expect(must(await listFindings(context, other, parcel))).toEqual([])
    }
    const change = await changeFindings(context, rival, { id, version: undefined, record: record() })
    expect(change).toMatchObject({ error: { why: 'not-found' } })
    const revisions = await transact(context.database, firm, (tx) =>
      tx
        .selectFrom('findings_revision')
        .select('revision')
        .where('findings', '=', id)
        .orderBy('revision')
        .execute(),
    )
    expect(revisions.map(({ revision }) => revision)).toEqual([1, 2])
  })

  test('of an inspection that is still to come is bad input', async () => {
    const { id: parcel } = await newParcel(context)
    expect(await draftFindings(context, firm, parcel, record('2026-11-03'))).toMatchObject({
      error: { why: 'invalid', issues: [{ pointer: '/inspectedOn' }] },
    })
  })
})

describe('what a submission has to say', () => {
  const submitted = async (entry: FindingsEntry) => {
    const { id: parcel } = await newParcel(context)
    const { id } = must(await draftFindings(context, firm, parcel, findingsRecord(entry)))
    return submitFindings(context, firm, id, undefined)
  }
  const tank = { label: 'tank', kind: 'tank', outcome: 'found', opened: 'port-only' } as const
  const field = { label: 'trenches', kind: 'trench', outcome: 'found' } as const

  test('nothing inspected is no inspection', async () => {
    const inspectedOn = '2026-10-12'
    for (const components of [[], [{ label: 'tank', kind: 'tank', outcome: 'not-looked-for' } as const]])
      expect(await submitted({ inspectedOn, components })).toMatchObject({
        error: { why: 'invalid', issues: [{ pointer: '/components' }] },
      })
    expect(
      await submitted({ inspectedOn, components: [], ground: 'surfacing', backup: false }),
    ).toMatchObject({ ok: true })
  })

  test('a cover that stayed on says why', async () => {
    const inspectedOn = '2026-10-12'
    expect(await submitted({ inspectedOn, components: [tank] })).toMatchObject({
      error: { why: 'invalid', issues: [{ pointer: '/components/0/notOpenedBecause' }] },
    })
    const components = [{ ...tank, notOpenedBecause: 'paved-over' } as const, field]
    expect(await submitted({ inspectedOn, components, ground: 'dry', backup: false })).toMatchObject({
      ok: true,
    })
  })

  test('what the protocol can’t do without says why it was left out, at its own field and once for each part', async () => {
    const inspectedOn = '2026-10-12'
    const opened = { ...tank, opened: 'cover-off' } as const
    const pointers = async (entry: FindingsEntry) => {
      const answer = await submitted(entry)
      return answer.ok
        ? []
        : answer.error.why === 'invalid'
          ? answer.error.issues.map(({ pointer }) => pointer)
          : null
    }
    const chamber = { label: 'chamber', kind: 'pump-chamber', outcome: 'found', opened: 'cover-off' } as const
    expect(await pointers({ inspectedOn, components: [opened, chamber] })).toEqual([
      '/components/0/leftOutBecause',
      '/leftOutBecause',
      '/notWalkedBecause',
      '/components/1/leftOutBecause',
      '/backup',
    ])
    expect(
      await pointers({
        inspectedOn,
        notWalkedBecause: 'refused',
        leftOutBecause: 'nobody-to-ask',
        components: [
          { ...opened, leftOutBecause: 'no-time' },
          { ...chamber, leftOutBecause: 'unsafe' },
        ],
      }),
    ).toEqual([])
  })

  test('a part on record that is not told of is asked for', async () => {
    const { id: parcel } = await newParcel(context)
    must(await enterPermit(context, reviewer, parcel, permitRecord(permit1974)))
    const entry = findingsRecord({ inspectedOn: '2026-10-12', ground: 'dry', backup: false })
    const { id } = must(await draftFindings(context, firm, parcel, entry))
    expect(await submitFindings(context, firm, id, undefined)).toMatchObject({
      error: { why: 'invalid', issues: [{ pointer: '/components/-' }, { pointer: '/components/-' }] },
    })
  })
})

describe('findings that were submitted', () => {
  test('are never changed, not even past the operations', async () => {
    const { id: parcel } = await newParcel(context)
    const { id } = await handIn(parcel)
    const change = await changeFindings(context, firm, { id, version: undefined, record: record() })
    expect(change).toMatchObject({ error: { why: 'conflict' } })
    const past = transact(context.database, firm, (tx) =>
      tx.updateTable('findings').set({ record: '{}' }).where('id', '=', id).execute(),
    )
    await expect(past).rejects.toThrow(/never changed/)
  })

  test('are seen by reviewers with the firm’s name, and by no other firm', async () => {
    const { id: parcel } = await newParcel(context)
    const { id } = await handIn(parcel)
    expect(must(await readFindings(context, reviewer, id)).firmName).toBe('Heron Inspections')
    expect(await readFindings(context, rival, id)).toMatchObject({ error: { why: 'not-found' } })
  })

  test('are amended once, by findings that take their place when they are submitted', async () => {
    const { id: parcel } = await newParcel(context)
    const first = await handIn(parcel)
    const amending = must(await amendFindings(context, firm, first.id, record('2026-10-13')))
    expect([amending.amends, await compared(parcel)]).toEqual([first.id, first.id])
    expect(await amendFindings(context, firm, first.id, record())).toMatchObject({
      error: { why: 'conflict' },
    })
    must(await submitFindings(context, firm, amending.id, undefined))
    expect(await compared(parcel)).toBe(amending.id)
    expect(must(await readFindings(context, reviewer, first.id)).amendedBy).toBe(amending.id)
    const again = must(await amendFindings(context, firm, amending.id, record('2026-10-12')))
    must(await submitFindings(context, firm, again.id, undefined))
    expect(await compared(parcel)).toBe(again.id)
  })

  test('of another firm can’t be amended, nor a draft', async () => {
    const { id: parcel } = await newParcel(context)
    const { id } = await handIn(parcel)
    expect(await amendFindings(context, rival, id, record())).toMatchObject({ error: { why: 'not-found' } })
    const { id: open } = await draft(parcel)
    expect(await amendFindings(context, firm, open, record())).toMatchObject({ error: { why: 'conflict' } })
  })
})

describe('a parcel is compared with', () => {
  test('the newest inspection, whoever made it and whenever it was submitted', async () => {
    const { id: parcel } = await newParcel(context)
    const newer = await handIn(parcel, rival, '2026-10-20')
    set('2026-11-03T15:00:00Z')
    await handIn(parcel, firm, '2026-10-12')
    expect(await compared(parcel)).toBe(newer.id)
  })

  test('of two inspections on one day, the one submitted last', async () => {
    const { id: parcel } = await newParcel(context)
    await handIn(parcel, firm)
    set('2026-11-04T15:00:00Z')
    const last = await handIn(parcel, rival)
    expect(await compared(parcel)).toBe(last.id)
  })
})
