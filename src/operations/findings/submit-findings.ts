import { invariant } from '../../base/invariant.ts'
import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { leftOutUnsaid } from '../../brief/submission/left-out.ts'
import { notReady } from '../../brief/submission/not-ready.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { type Findings, findingsById, lockFindings, markSubmitted } from '../../store/findings.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel } from '../../store/parcels.ts'
import { systemById } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { inspectionAhead, keysNotOnRecord } from './findings-faults.ts'

export type FindingsSubmitted = { readonly findings: Findings; readonly reconciled: Reconciled }

/** Hands a draft in: from then on it counts, is seen by reviewers, and is never changed. Reconciles the parcel with it. */
export const submitFindings = (
  context: OperationContext,
  actor: Person,
  id: string,
  version: number | undefined,
): Promise<Answer<FindingsSubmitted>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county, account } = actor
    const at = context.clock()
    const known = await findingsById(tx, county, id)
    if (!known) return notFound()
    // The parcel first, as everyone does who changes what its answer rests on: no two wait for each other.
    await lockParcel(tx, county, known.parcel)
    const draft = await lockFindings(tx, county, id)
    if (!draft) return notFound()
    if (draft.state === 'submitted') return conflict('These findings are already submitted.')
    if (version !== undefined && version !== draft.revision) return stale()
    const own = [...inspectionAhead(draft.record, dayOf(at)), ...notReady(draft.record)]
    const issues = own.length > 0 ? own : await unsaid({ ...context, database: within }, actor, draft)
    if (issues.length > 0) return invalid(...issues)
    const revision = draft.revision + 1
    await markSubmitted(tx, county, id, revision, { by: account, at })
    await recordEvent(tx, actor, {
      id: context.newId(),
      kind: draft.amends ? 'findings-amended' : 'findings-submitted',
      subjectKind: 'findings',
      subject: id,
      parcel: draft.parcel,
      afterHash: hashOf(draft.record),
      body: draft.amends ? { amends: draft.amends } : {},
      at,
    })
    const reconciled = await reconcileParcel(
      { ...context, database: within },
      actor,
      draft.parcel,
      draft.amends ? 'findings-amended' : 'findings-submitted',
      draft.system,
    )
    return ok({
      findings: { ...draft, state: 'submitted', revision, changedAt: at, submittedAt: at },
      reconciled,
    })
  })

/** What the protocol asks of the system on file, and keys that name nothing on it, which the firm itself may not read in full. */
const unsaid = (context: OperationContext, actor: Person, draft: Findings): Promise<readonly EntryIssue[]> =>
  transact(context.database, asService(actor), async (tx) => {
    const system = await systemById(tx, actor.county, draft.system)
    invariant(system, `findings of a system that is not there: ${draft.id}`)
    const { input } = await gatherInput(tx, context, actor.county, system)
    const { id, organization: firm, record } = draft
    return [
      ...leftOutUnsaid(input, { id, firm, submittedOn: input.asOf, record }),
      ...keysNotOnRecord(record, input),
    ]
  })
