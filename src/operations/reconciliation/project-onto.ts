import { canonicalText } from '../../base/canonical.ts'
import { evidenceOf } from '../../reconcile/evidence.ts'
import { withoutWorking } from '../../reconcile/kept.ts'
import { type Projected, project } from '../../reconcile/projection.ts'
import type { Discrepancy } from '../../reconcile/reconcile.ts'
import type { Decision } from '../../store/decisions.ts'
import type { StandingDiscrepancy } from '../../store/discrepancies.ts'
import type { ChangeNoticed } from '../../store/discrepancy-changes.ts'
import type { Findings } from '../../store/findings.ts'
import { hashOf } from '../../store/hash.ts'
import type { StoredReconciliation } from '../../store/reconciliations.ts'
import type { OperationContext } from '../context.ts'

/** What stands on a parcel before a new reconciliation, and what was decided about it. */
export type Stood = {
  readonly before: readonly StandingDiscrepancy[]
  readonly decisions: readonly Decision[]
  readonly findings: Findings | undefined
}

/** What stands after it, and which of that has to be written. */
export type Projection = {
  readonly standing: readonly StandingDiscrepancy[]
  readonly inserted: readonly StandingDiscrepancy[]
  readonly updated: readonly StandingDiscrepancy[]
  /** What appeared, changed, vanished or returned. */
  readonly changes: readonly ChangeNoticed[]
}

/** Brings what stands on a parcel to what a new reconciliation says; writes nothing. */
export function projectOnto(
  { before, decisions, findings }: Stood,
  made: StoredReconciliation,
  { newId }: Pick<OperationContext, 'newId'>,
): Projection {
  const raised = new Map<string, Discrepancy>()
  for (const it of made.result.discrepancies) if (!raised.has(it.key)) raised.set(it.key, withoutWorking(it))
  const hashes = new Map([...raised].map(([key, it]) => [key, hashOf(evidenceOf(it))]))

  const projected = project(
    before.map(({ key, state, evidenceHash, decision }) => ({
      key,
      state,
      evidenceHash,
      decision: inForce(decisions, decision, findings),
    })),
    [...hashes].map(([key, evidenceHash]) => ({ key, evidenceHash })),
  )
  const inserted: StandingDiscrepancy[] = []
  const updated: StandingDiscrepancy[] = []
  const changes: ChangeNoticed[] = []
  const stands = projected.map((it) => {
    const old = before.find(({ key }) => key === it.key)
    const now = standing(it, old, raised.get(it.key), hashes.get(it.key))
    if (!old) inserted.push(now)
    else if (differs(old, now)) updated.push(now)
    if (it.change) changes.push(noticed(it.change, old, now))
    return now
  })
  return { standing: stands, inserted, updated, changes }

  function standing(
    { key, state, change }: Projected,
    old: StandingDiscrepancy | undefined,
    body: Discrepancy | undefined,
    evidenceHash: string | undefined,
  ): StandingDiscrepancy {
    const at = made.madeAt
    // What is no longer raised keeps its last words: they say what it was.
    const told = body && evidenceHash ? { body, evidenceHash, reconciliation: made.id } : old!
    const next: StandingDiscrepancy = {
      id: old?.id ?? newId(),
      parcel: made.parcel,
      system: made.system,
      key,
      kind: told.body.kind,
      organization: body ? made.organization : (old?.organization ?? null),
      severity: told.body.severity,
      state,
      evidenceHash: told.evidenceHash,
      reconciliation: told.reconciliation,
      body: told.body,
      decision: old?.decision ?? null,
      raisedAt: old?.raisedAt ?? at,
      changedAt: old && change === null && old.state === state ? old.changedAt : at,
      revision: old?.revision ?? 1,
    }
    return old && looksOther(old, next) ? { ...next, revision: old.revision + 1 } : next
  }

  function noticed(
    change: ChangeNoticed['change'],
    old: StandingDiscrepancy | undefined,
    now: StandingDiscrepancy,
  ): ChangeNoticed {
    const gone = now.state === 'vanished'
    return {
      id: newId(),
      parcel: made.parcel,
      discrepancy: now.id,
      reconciliation: made.id,
      change,
      beforeHash: change === 'appeared' || change === 'returned' ? null : (old?.evidenceHash ?? null),
      afterHash: gone ? null : now.evidenceHash,
      body: {
        kind: now.kind,
        about: now.body.outcome.subject,
        before: change === 'appeared' ? null : (old?.body.outcome.reason ?? null),
        after: gone ? null : now.body.outcome.reason,
        state: now.state,
      },
      noticedAt: made.madeAt,
    }
  }
}

function inForce(decisions: readonly Decision[], id: string | null, findings: Findings | undefined) {
  const decision = decisions.find((it) => it.id === id)
  if (!decision) return null
  const { action, evidenceHash, decidedAt } = decision
  const submittedAt = findings?.submittedAt ?? null
  return { action, evidenceHash, inspectedSince: submittedAt !== null && submittedAt > decidedAt }
}

/** Whoever read it would read something else now. */
const looksOther = (old: StandingDiscrepancy, now: StandingDiscrepancy): boolean =>
  old.state !== now.state ||
  old.organization !== now.organization ||
  canonicalText(old.body) !== canonicalText(now.body)

const differs = (old: StandingDiscrepancy, now: StandingDiscrepancy): boolean =>
  old.revision !== now.revision || old.reconciliation !== now.reconciliation
