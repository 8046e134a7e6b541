import type { FindingsRecord } from '../../records/findings.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Findings, findingsOf } from '../../store/findings.ts'
import { lockParcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, stale } from '../refusal.ts'
import { draftFindings } from './draft-findings.ts'

/**
 * Begins a firm's draft on a system where it has none: of two presses of one button the second finds what the first
 * began, and is told that it came too late.
 */
export const beginInspection = (
  context: OperationContext,
  actor: Person,
  parcel: string,
  record: FindingsRecord,
  system: string,
): Promise<Answer<Findings>> =>
  transact(context.database, actor, async (tx, within) => {
    await lockParcel(tx, actor.county, parcel)
    const own = await findingsOf(tx, actor.county, system)
    if (own.some(({ state }) => state === 'draft')) return stale()
    return draftFindings({ ...context, database: within }, actor, parcel, record, system)
  })
