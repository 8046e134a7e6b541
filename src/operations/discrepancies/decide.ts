import { ok } from '../../base/result.ts'
import { type DecisionAction, isWaiver } from '../../records/decision.ts'
import { asService, type Person } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type CorrectionDecided, type Decision, decisionById, insertDecision } from '../../store/decisions.ts'
import { discrepancyById, type StandingDiscrepancy, updateDiscrepancy } from '../../store/discrepancies.ts'
import { recordEvent } from '../../store/events.ts'
import { lockParcel } from '../../store/parcels.ts'
import type { DatedStatus } from '../../store/statuses.ts'
import { systemById } from '../../store/systems.ts'
import type { OperationContext } from '../context.ts'
import { gatherInput } from '../reconciliation/gather-input.ts'
import { type Reconciled, reconcileParcel } from '../reconciliation/reconcile-parcel.ts'
import { statusAgain } from '../reconciliation/status-again.ts'
import { type Answer, conflict, notFound, stale } from '../refusal.ts'
import { type CorrectionAsked, readCorrection } from './read-correction.ts'

export type DecisionAsked = {
  readonly discrepancy: string
  /** The revision of the discrepancy that was looked at; undefined where whatever stands is decided. */
  readonly version: number | undefined
  readonly action: DecisionAction
  readonly reason: string
  /** What has to be done, in words, where something has to be. */
  readonly asks: string | null
  /** With `correct-record`, and only then. */
  readonly correction: CorrectionAsked | null
  /** The decision in force, where one is: it is replaced knowingly or not at all. */
  readonly supersedes: string | null
}

export type Decided = {
  readonly decision: Decision
  readonly discrepancy: StandingDiscrepancy
  readonly status: DatedStatus
  /** Where the decision changed the record; null where it changed none. */
  readonly reconciled: Reconciled | null
}

/**
 * What a reviewer makes of a discrepancy. Nothing is deleted: a decision stands until another supersedes it. One that
 * corrects the record (or takes such a correction back) reconciles the parcel with it. Of two at once, one is made and
 * the other refused.
 */
export const decide = (
  context: OperationContext,
  actor: Person,
  asked: DecisionAsked,
): Promise<Answer<Decided>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county } = actor
    const known = await discrepancyById(tx, county, asked.discrepancy)
    if (!known) return notFound()
    await lockParcel(tx, county, known.parcel)
    const standing = await discrepancyById(tx, county, asked.discrepancy)
    if (!standing) return notFound()
    if (asked.version !== undefined && asked.version !== standing.revision) return stale()
    const refusal = doesNotFit(standing, asked) ?? cannotBeDecided(standing, asked)
    if (refusal) return conflict(refusal)
    const joined = { ...context, database: within }
    const correction = await correctionOf(joined, actor, standing.system, asked)
    if (!correction.ok) return correction

    const replaced = asked.supersedes ? await decisionById(tx, county, asked.supersedes) : undefined
    const decision = await keep(tx, context, actor, standing, asked, correction.value)
    if (correction.value || replaced?.correction) {
      const reconciled = await reconcileParcel(
        joined,
        actor,
        standing.parcel,
        'record-corrected',
        standing.system,
      )
      const discrepancy = (await discrepancyById(tx, county, standing.id)) ?? standing
      return ok({ decision, discrepancy, status: reconciled.status, reconciled })
    }
    const status = await statusAgain(joined, actor, standing.parcel)
    const discrepancy = (await discrepancyById(tx, county, standing.id)) ?? standing
    return ok({ decision, discrepancy, status, reconciled: null })
  })

/** What an inspection left out is waived for a reason of the list, and nothing else is. */
function doesNotFit({ kind }: StandingDiscrepancy, { action }: DecisionAsked): string | undefined {
  const leftOut = kind === 'inspection-incomplete'
  if (isWaiver(action) && !leftOut) return 'Only what an inspection left out can be waived.'
  if (leftOut && !isWaiver(action) && action !== 'ask-remeasurement')
    return 'What an inspection left out is waived for one of the reasons listed, or the firm is asked to do it.'
  return undefined
}

/** In words, where the state of things does not allow it. */
function cannotBeDecided(standing: StandingDiscrepancy, { supersedes }: DecisionAsked): string | undefined {
  if (standing.state === 'vanished' && supersedes === null) {
    return 'It no longer stands: the record and what was found agree about it now.'
  }
  if (standing.decision === supersedes) return undefined
  if (standing.decision === null) return 'There is no decision yet: leave out supersedes.'
  return `Decision ${standing.decision} is in force. To replace it, name it in supersedes.`
}

async function correctionOf(
  context: OperationContext,
  actor: Person,
  system: string,
  { correction }: DecisionAsked,
): Promise<Answer<CorrectionDecided | null>> {
  if (!correction) return ok(null)
  return transact(context.database, asService(actor), async (tx) => {
    const known = await systemById(tx, actor.county, system)
    if (!known) return notFound()
    const { input } = await gatherInput(tx, context, actor.county, known)
    return readCorrection(correction, input)
  })
}

async function keep(
  tx: Tx,
  { newId, clock }: OperationContext,
  actor: Person,
  standing: StandingDiscrepancy,
  { action, reason, asks, supersedes }: DecisionAsked,
  correction: CorrectionDecided | null,
): Promise<Decision> {
  const at = clock()
  const decision: Decision = {
    id: newId(),
    discrepancy: standing.id,
    parcel: standing.parcel,
    system: standing.system,
    action,
    reason,
    evidenceHash: standing.evidenceHash,
    correction,
    asks,
    supersedes,
    supersededBy: null,
    decidedBy: actor.account,
    decidedAt: at,
  }
  await insertDecision(tx, actor.county, decision)
  await updateDiscrepancy(tx, actor.county, {
    ...standing,
    decision: decision.id,
    state: standing.state === 'vanished' ? 'vanished' : 'decided',
    changedAt: at,
    revision: standing.revision + 1,
  })
  await recordEvent(tx, actor, {
    id: newId(),
    kind: 'discrepancy-decided',
    subjectKind: 'discrepancy',
    subject: standing.id,
    parcel: standing.parcel,
    body: { decision: decision.id, action, reason, supersedes },
    at,
  })
  return decision
}
