import { dayOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { type Findings, findingsById, lockFindings, markSubmitted } from '../../store/findings.ts'
import { hashOf } from '../../store/hash.ts'
import { lockParcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { type Answer, conflict, invalid, notFound, stale } from '../refusal.ts'
import { inspectionAhead, notReady } from './findings-faults.ts'

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
    const issues = [...inspectionAhead(draft.record, dayOf(at)), ...notReady(draft.record)]
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
    )
    return ok({
      findings: { ...draft, state: 'submitted', revision, changedAt: at, submittedAt: at },
      reconciled,
    })
  })
