import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type Findings, insertDraft } from '../../store/findings.ts'
import type { OperationContext } from '../context.ts'
import { mayHaveAnother } from '../quotas.ts'
import { type Answer, invalid } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import { inspectionAhead } from './findings-faults.ts'

/** Begins the findings of an inspection: seen by the firm alone until they are submitted. */
export const draftFindings = (
  context: OperationContext,
  actor: Person,
  asked: string,
  record: FindingsRecord,
  system?: string,
): Promise<Answer<Findings>> =>
  transact(context.database, actor, async (tx) => {
    const { county, account, organization } = actor
    const at = context.clock()
    const found = await systemAsked(tx, county, asked, system)
    if (!found.ok) return found
    const issues = inspectionAhead(record, dayOf(at))
    if (issues.length > 0) return invalid(...issues)
    const may = await mayHaveAnother(tx, context, 'drafts')
    if (!may.ok) return may
    const id = context.newId()
    const { parcel, system: inspected } = found.value
    const draft = { id, parcel: parcel.id, system: inspected.id, organization, record, amends: null }
    await insertDraft(tx, county, draft, { by: account, at })
    return ok(newDraft(draft, at))
  })

export const newDraft = (
  draft: Pick<Findings, 'id' | 'parcel' | 'system' | 'organization' | 'record' | 'amends'>,
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
