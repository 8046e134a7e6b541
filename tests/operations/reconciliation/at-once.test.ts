import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { readNewestReconciliation } from '../../../src/operations/reconciliation/read-reconciliation.ts'
import { reconcileParcel } from '../../../src/operations/reconciliation/reconcile-parcel.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'
import {
  findingsRecord,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  permitRecord,
  repair1996,
} from '../../support/quillback.ts'

const { services: context, people } = await testApp()
const { reviewer, firm } = people

const newest = async (parcel: string) =>
  must(await readNewestReconciliation(context, reviewer, parcel)).reconciliation

describe('at the same moment', () => {
  test.each(Array.from({ length: 8 }, (_, round) => round))(
    'a late permit and a submission end in a reconciliation that saw both (%i)',
    async (round) => {
      const { id: parcel } = await newParcel(context)
      must(await enterPermit(context, reviewer, parcel, permitRecord(permit1974)))
      const draft = must(await draftFindings(context, firm, parcel, findingsRecord(inspectionThatDiffers)))
      const both = [
        () => submitFindings(context, firm, draft.id, undefined),
        () => enterPermit(context, reviewer, parcel, permitRecord(repair1996)),
      ]
      await Promise.all(
        (round % 2 === 0 ? both : both.reverse()).map(async (it) => expect((await it()).ok).toBe(true)),
      )
      const { inputs, findings } = await newest(parcel)
      expect([inputs.permits.length, findings]).toEqual([2, draft.id])
    },
  )

  test('two submissions of one draft: one is made and the other refused', async () => {
    const { id: parcel } = await newParcel(context)
    const draft = must(await draftFindings(context, firm, parcel, findingsRecord(inspectionThatDiffers)))
    const both = await Promise.all([1, 2].map(() => submitFindings(context, firm, draft.id, undefined)))
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true])
    expect(both.find(({ ok }) => !ok)).toMatchObject({ error: { why: 'conflict' } })
  })

  test('ten permits of one parcel are all in the answer', async () => {
    const { id: parcel } = await newParcel(context)
    await Promise.all(
      Array.from({ length: 10 }, async (_, index) =>
        must(
          await enterPermit(
            context,
            reviewer,
            parcel,
            permitRecord({ ...repair1996, number: `96-${index}` }),
          ),
        ),
      ),
    )
    expect((await newest(parcel)).inputs.permits).toHaveLength(10)
  })

  test('the same permit twice: the second is told where the first is', async () => {
    const { id: parcel } = await newParcel(context)
    const both = await Promise.all(
      [1, 2].map(() => enterPermit(context, reviewer, parcel, permitRecord(permit1974))),
    )
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true])
  })
})

test('a parcel on which nothing has changed is not reconciled again', async () => {
  const { id: parcel } = await newParcel(context)
  const { reconciled } = must(await enterPermit(context, reviewer, parcel, permitRecord(permit1974)))
  const again = await reconcileParcel(context, serviceIn(COUNTY), parcel, 'asked-for')
  expect(again.reconciliation.id).toBe(reconciled.reconciliation.id)
  expect(again.changes).toEqual([])
})

test('a submission that fails leaves neither findings nor answer', async () => {
  const { id: parcel } = await newParcel(context)
  const draft = must(await draftFindings(context, firm, parcel, findingsRecord(inspectionThatDiffers)))
  const broken = { ...context, book: undefined as never }
  await expect(submitFindings(broken, firm, draft.id, undefined)).rejects.toThrow()
  const state = await transact(context.database, firm, (tx) =>
    tx.selectFrom('findings').select('state').where('id', '=', draft.id).executeTakeFirstOrThrow(),
  )
  expect(state.state).toBe('draft')
  expect((await readNewestReconciliation(context, reviewer, parcel)).ok).toBe(false)
})
