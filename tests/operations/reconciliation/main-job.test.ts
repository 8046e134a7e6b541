import { expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { decide } from '../../../src/operations/discrepancies/decide.ts'
import { readDiscrepancy } from '../../../src/operations/discrepancies/read-discrepancy.ts'
import { amendFindings } from '../../../src/operations/findings/amend-findings.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { readStatus } from '../../../src/operations/parcels/read-status.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import type { Reconciled } from '../../../src/operations/reconciliation/reconcile-parcel.ts'
import { replayReconciliation } from '../../../src/operations/reconciliation/replay-reconciliation.ts'
import { testApp } from '../../support/app.ts'
import {
  findingsRecord,
  inspectionThatAgrees,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  permitRecord,
  repair1996,
  standingClock,
} from '../../support/quillback.ts'

const { clock, set } = standingClock('2026-11-02T15:00:00Z')
const { services: context, people } = await testApp({ clock })
const { reviewer, firm } = people

const told = ({ changes }: Reconciled) =>
  changes.map(({ change, body }) => `${change}: ${body.kind} (${body.about.label})`)

/** The standing discrepancy of a kind, by the newest run. */
const idOf = (reconciled: Reconciled, kind: string): string =>
  reconciled.changes.find(({ body }) => body.kind === kind)!.discrepancy

test('permit in, findings in, differences out, decided, late paper, amended', async () => {
  const { id: parcel } = await newParcel(context)
  const word = async () => must(await readStatus(context, people.agent, parcel)).status.word
  expect(await word()).toBe('no-record')

  const entered = must(await enterPermit(context, reviewer, parcel, permitRecord(permit1974)))
  expect(told(entered.reconciled)).not.toContain('appeared: record-absent (the system)')
  expect(await word()).toBe('not-inspected')

  const draft = must(await draftFindings(context, firm, parcel, findingsRecord(inspectionThatDiffers)))
  expect(await word()).toBe('not-inspected')

  const submitted = must(await submitFindings(context, firm, draft.id, draft.revision))
  expect(told(submitted.reconciled)).toEqual(
    expect.arrayContaining([
      'appeared: capacity-below-record (tank)',
      'appeared: line-replaced-without-permit (line)',
    ]),
  )
  expect(submitted.reconciled.status.word).toBe('under-review')
  expect(await word()).toBe('under-review')

  set('2026-11-03T10:00:00Z')
  const line = idOf(submitted.reconciled, 'line-replaced-without-permit')
  const required = must(
    await decide(context, reviewer, {
      discrepancy: line,
      version: 1,
      action: 'require-permit',
      reason: 'Work without paper.',
      asks: null,
      correction: null,
      supersedes: null,
    }),
  )
  expect(required.status.word).toBe('action-needed')
  expect(required.status.items[0]).toMatchObject({ state: 'owner-must-act' })

  set('2026-11-04T10:00:00Z')
  const late = must(await enterPermit(context, reviewer, parcel, permitRecord(repair1996)))
  expect(told(late.reconciled)).toEqual(
    expect.arrayContaining([
      'appeared: line-replaced (line)',
      'vanished: line-replaced-without-permit (line)',
    ]),
  )
  const after = must(await readDiscrepancy(context, reviewer, line))
  expect(after.discrepancy.state).toBe('vanished')
  expect(after.decisions.map(({ action }) => action)).toEqual(['require-permit'])
  expect(after.changes.map(({ change }) => change)).toEqual(['appeared', 'vanished'])
  expect(await word()).toBe('under-review')

  const tank = idOf(submitted.reconciled, 'capacity-below-record')
  const accepted = must(
    await decide(context, reviewer, {
      discrepancy: tank,
      version: undefined,
      action: 'accept',
      reason: 'The card rounded up.',
      asks: null,
      correction: null,
      supersedes: null,
    }),
  )
  expect(accepted.discrepancy.state).toBe('decided')

  set('2026-11-05T10:00:00Z')
  const amended = must(
    await amendFindings(context, firm, draft.id, {
      ...findingsRecord(inspectionThatDiffers),
      components: findingsRecord(inspectionThatAgrees).components,
    }),
  )
  const again = must(await submitFindings(context, firm, amended.id, undefined))
  expect(told(again.reconciled)).toContain('vanished: capacity-below-record (tank)')
  const stood = must(await readDiscrepancy(context, reviewer, tank))
  expect(stood.decisions).toHaveLength(1)
  expect(stood.discrepancy.state).toBe('vanished')

  for (const { reconciled } of [entered, submitted, late, again]) {
    const replay = must(await replayReconciliation(context, reviewer, reconciled.reconciliation.id))
    expect(replay).toMatchObject({ missing: [], same: true })
  }
})
