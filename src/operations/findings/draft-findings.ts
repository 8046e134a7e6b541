import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Findings, insertDraft } from '../../store/findings.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { mayHaveAnother } from '../quotas.ts'
import { type Answer, invalid } from '../refusal.ts'
import { inspectionAhead } from './findings-faults.ts'

/** Begins the findings of an inspection: seen by the firm alone until they are submitted. */
export const draftFindings = (
  context: OperationContext,
  actor: Person,
  asked: string,
  record: FindingsRecord,
): Promise<Answer<Findings>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account, organization } = actor
    const at = context.clock()
    const parcel = await parcelAsked(tx, county, asked)
    if (!parcel.ok) return parcel
    const issues = inspectionAhead(record, dayOf(at))
    if (issues.length > 0) return invalid(...issues)
    const may = await mayHaveAnother(tx, context, 'drafts')
    if (!may.ok) return may
    const id = context.newId()
    const draft = { id, parcel: parcel.value.id, organization, record, amends: null }
    await insertDraft(tx, county, draft, { by: account, at })
    return ok(newDraft(draft, at))
  })

export const newDraft = (
  draft: Pick<Findings, 'id' | 'parcel' | 'organization' | 'record' | 'amends'>,
  at: Date,
): Findings => ({
  ...draft,
  state: 'draft',
  revision: 1,
  amendedBy: null,
  createdAt: at,
  changedAt: at,
  submittedAt: null,
})
