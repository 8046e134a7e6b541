import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { draftFindings } from '../../../src/operations/findings/draft-findings.ts'
import { submitFindings } from '../../../src/operations/findings/submit-findings.ts'
import { readStatus } from '../../../src/operations/parcels/read-status.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import { listReconciliations } from '../../../src/operations/reconciliation/read-reconciliation.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import {
  findingsRecord,
  inspectionThatAgrees,
  newParcel,
  permit1974,
  permitRecord,
  standingClock,
} from '../../support/quillback.ts'

const { clock, set } = standingClock('2026-11-02T15:00:00Z')
const { services: context, people } = await testApp({ clock })
const { reviewer, firm, agent } = people

const status = async (parcel: string) => must(await readStatus(context, agent, parcel)).status
const occasions = async (parcel: string) =>
  must(await listReconciliations(context, reviewer, parcel, undefined, 100)).map(({ occasion }) => occasion)

async function inspected() {
  const { id } = await newParcel(context)
  must(await enterPermit(context, reviewer, id, permitRecord(permit1974)))
  const draft = must(await draftFindings(context, firm, id, findingsRecord(inspectionThatAgrees)))
  must(await submitFindings(context, firm, draft.id, undefined))
  return id
}

describe('a status', () => {
  test('of a parcel with nothing in its file is told and written nowhere', async () => {
    const { id } = await newParcel(context)
    expect((await status(id)).word).toBe('no-record')
    const rows = await transact(context.database, reviewer, (tx) =>
      tx.selectFrom('discrepancy').select('id').where('parcel', '=', id).execute(),
    )
    expect(rows).toEqual([])
  })

  test('holds while nothing happens, as of the day it is asked', async () => {
    const id = await inspected()
    const before = await status(id)
    set('2027-10-12T15:00:00Z')
    expect(await status(id)).toEqual({ ...before, asOf: '2027-10-12' })
    expect(await occasions(id)).toEqual(['findings-submitted', 'permit-entered'])
  })

  test('is derived anew once time alone has changed it, once', async () => {
    set('2026-11-02T15:00:00Z')
    const id = await inspected()
    set('2027-10-13T15:00:00Z')
    const all = await Promise.all([status(id), status(id), status(id)])
    expect(all.map(({ word, asOf }) => [word, asOf])).toEqual(
      Array.from({ length: 3 }, () => ['out-of-date', '2027-10-13']),
    )
    expect(await occasions(id)).toEqual(['time-passed', 'findings-submitted', 'permit-entered'])
  })

  test('of a parcel that is not there is not found', async () => {
    expect(await readStatus(context, agent, '99-9999-9999')).toMatchObject({ error: { why: 'not-found' } })
  })
})
