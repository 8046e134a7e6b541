import type { PlainDate } from '../../src/base/plain-date.ts'
import { FIRMS, type ParcelFile } from '../../src/cli/demonstration/story.ts'
import { evidenceOf } from '../../src/reconcile/evidence.ts'
import { stateAfter } from '../../src/reconcile/projection.ts'
import { type Discrepancy, type Reconciliation, reconcile } from '../../src/reconcile/reconcile.ts'
import { type ParcelStatus, statusOf } from '../../src/reconcile/status.ts'
import type { Correction } from '../../src/records/as-built.ts'
import type { SubmittedFindings } from '../../src/records/findings.ts'
import type { FiledPermit } from '../../src/records/permit.ts'
import type { RuleBook } from '../../src/rules/book.ts'

export type Played = { readonly reconciliation: Reconciliation; readonly status: ParcelStatus }

/** The answer for a parcel on a day, by what had come in by then. A permit's number serves as its id. */
export function play(file: ParcelFile, on: PlainDate, book: RuleBook): Played {
  const reconciliation = reconcile({
    county: 'quillback',
    asOf: on,
    permits: permitsBy(file, on),
    corrections: correctionsBy(file, on),
    findings: findingsBy(file, on),
    ...(file.given ? { system: file.given } : {}),
    book,
  })
  return { reconciliation, status: statusBy(file, on, reconciliation, book) }
}

const permitsBy = (file: ParcelFile, on: PlainDate): readonly FiledPermit[] =>
  file.permits
    .filter(({ enteredOn }) => enteredOn === undefined || enteredOn <= on)
    .map(({ record, enteredOn }) => ({
      id: record.number,
      revision: 1,
      record,
      sources: { '': { kind: 'typed', by: 'records clerk', on: enteredOn ?? '2025-09-01' } },
    }))

function findingsBy(file: ParcelFile, on: PlainDate): SubmittedFindings | null {
  const submitted = file.findings.filter(({ submittedOn }) => submittedOn <= on)
  const last = submitted.at(-1)
  if (!last) return null
  return {
    id: `inspection ${submitted.length}`,
    firm: FIRMS[last.firm],
    submittedOn: last.submittedOn,
    record: last.record,
  }
}

const correctionsBy = (file: ParcelFile, on: PlainDate): readonly Correction[] =>
  file.decisions.flatMap(({ on: decidedOn, corrects }, index): Correction[] => {
    if (!corrects || decidedOn > on) return []
    const { permit, component, field, value } = corrects
    return [
      {
        decision: `decision ${index + 1}`,
        on: decidedOn,
        by: 'reviewer',
        permit,
        component: component === undefined ? null : `${permit}/${component}`,
        field,
        value,
      },
    ]
  })

type Target = { readonly kind: string; readonly subject: string; readonly facet?: string | undefined }

export const isTarget = ({ kind, outcome }: Discrepancy, target: Target): boolean =>
  kind === target.kind &&
  outcome.subject.key === target.subject &&
  (target.facet === undefined || outcome.facet === target.facet)

function statusBy(
  file: ParcelFile,
  on: PlainDate,
  { asBuilt, findings, discrepancies }: Reconciliation,
  book: RuleBook,
): ParcelStatus {
  const decisions = file.decisions.filter((decision) => decision.on <= on)
  return statusOf({
    hasApprovedPermit: asBuilt.permits.length > 0,
    hasInspection: findings !== null,
    standing: discrepancies.map((it) => {
      const decision = decisions.findLast((made) => isTarget(it, made))
      const decided = decision && holds(file, decision, on, it, book) ? decision.action : null
      return { discrepancy: it, decided }
    }),
    decidedBefore: decisions.some((decision) => !discrepancies.some((it) => isTarget(it, decision))),
  })
}

/** A decision holds while its ground has not moved. */
function holds(
  file: ParcelFile,
  decision: ParcelFile['decisions'][number],
  on: PlainDate,
  now: Discrepancy,
  book: RuleBook,
): boolean {
  const before = { ...file, decisions: file.decisions.filter((other) => other.on < decision.on) }
  const then = play(before, decision.on, book).reconciliation.discrepancies.find((it) =>
    isTarget(it, decision),
  )
  const evidence = (it: Discrepancy) => JSON.stringify(evidenceOf(it))
  const inForce = {
    action: decision.action,
    evidenceHash: then ? evidence(then) : '',
    inspectedSince: file.findings.some(({ submittedOn }) => submittedOn > decision.on && submittedOn <= on),
  }
  return stateAfter(inForce, evidence(now), false) === 'decided'
}
