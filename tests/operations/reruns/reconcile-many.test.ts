import { expect, test } from 'vitest'
import { dayOf } from '../../../src/base/plain-date.ts'
import { must } from '../../../src/base/result.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { gatherInput } from '../../../src/operations/reconciliation/gather-input.ts'
import { reconcileParcel } from '../../../src/operations/reconciliation/reconcile-parcel.ts'
import { inputAmong } from '../../../src/operations/reruns/gather-many.ts'
import { reconcileMany } from '../../../src/operations/reruns/reconcile-many.ts'
import { ownSystem } from '../../../src/records/system.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { discrepanciesOf } from '../../../src/store/discrepancies.ts'
import { hashOf } from '../../../src/store/hash.ts'
import { onFileOf } from '../../../src/store/many-parcels.ts'
import { newestReconciliation } from '../../../src/store/reconciliations.ts'
import { derivedStatus } from '../../../src/store/statuses.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'
import {
  inspectionThatAgrees,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  permitRecord,
} from '../../support/quillback.ts'

const { services, people, ask } = await testApp()
const service = serviceIn(COUNTY)
const here = `/v1/counties/${COUNTY}`

const parcels: string[] = []
for (const [index, inspection] of [inspectionThatDiffers, inspectionThatAgrees, null].entries()) {
  const parcel = await newParcel(services)
  must(
    await enterPermit(
      services,
      people.reviewer,
      parcel.number,
      permitRecord({ ...permit1974, number: `74-${index}` }),
    ),
  )
  if (inspection) {
    const draft = (
      await ask('firm', {
        method: 'POST',
        url: `${here}/parcels/${parcel.number}/findings`,
        body: inspection,
      })
    ).body
    await ask('firm', { method: 'POST', url: `${here}/findings/${draft.id}/submission` })
  }
  parcels.push(parcel.id)
}
const [decided] = (await ask('reviewer', { url: `${here}/discrepancies?kind=capacity-below-record` })).body
  .items
const permit = (await ask('reviewer', { url: `${here}/parcels/${parcels[0]}` })).body.permits[0].id
await ask('reviewer', {
  method: 'POST',
  url: `${here}/discrepancies/${decided.id}/decisions`,
  headers: { 'if-match': `"r${decided.revision}"` },
  body: {
    action: 'correct-record',
    reason: 'The card reads 720.',
    correction: {
      permit,
      component: `${permit}/tank`,
      field: 'capacity',
      value: '720 gal',
    },
  },
})

test('what is gathered for many at once is what is gathered for each alone', async () => {
  await transact(services.database, service, async (tx) => {
    const onFile = await onFileOf(tx, COUNTY, parcels)
    const asked = { place: COUNTY, asOf: dayOf(services.clock()), book: services.book }
    for (const parcel of parcels) {
      const { input } = await gatherInput(tx, services, COUNTY, ownSystem({ id: parcel, number: '' }))
      expect(hashOf({ ...inputAmong(onFile, parcel, asked), book: null })).toBe(
        hashOf({ ...input, book: null }),
      )
    }
  })
})

test('many reconciled together leave what each alone would leave', async () => {
  // Years later, so that time alone has changed every answer; the transaction that runs them is undone.
  const alone: unknown[] = []
  const together: unknown[] = []
  for (const [how, into] of [
    ['alone', alone],
    ['together', together],
  ] as const) {
    const undone = new Error('undone')
    const run = transact(services.database, service, async (tx, within) => {
      const context = { ...services, database: within, clock: () => new Date('2030-01-01T00:00:00Z') }
      if (how === 'alone')
        for (const parcel of parcels) await reconcileParcel(context, service, parcel, 'time-passed')
      else {
        const onFile = await onFileOf(tx, COUNTY, parcels)
        const asked = { place: COUNTY, asOf: dayOf(context.clock()), book: services.book }
        const inputs = new Map(parcels.map((parcel) => [parcel, inputAmong(onFile, parcel, asked)]))
        await reconcileMany(tx, context, service, inputs, onFile, 'time-passed')
      }
      for (const parcel of parcels) {
        into.push(
          await within.perform(service, async (own) => {
            const newest = await newestReconciliation(own, COUNTY, parcel)
            const standing = await discrepanciesOf(own, COUNTY, parcel)
            const status = await derivedStatus(own, COUNTY, parcel)
            return {
              result: newest!.resultHash,
              inputs: newest!.inputHash,
              standing: standing
                .map(({ key, state, severity, evidenceHash, decision, body, revision }) => ({
                  key,
                  state,
                  severity,
                  evidenceHash,
                  decision,
                  body,
                  revision,
                }))
                .sort((a, b) => a.key.localeCompare(b.key)),
              status: status!.status,
              goodUntil: status!.goodUntil,
            }
          }),
        )
      }
      throw undone
    })
    await expect(run).rejects.toBe(undone)
  }
  expect(together).toEqual(alone)
})
