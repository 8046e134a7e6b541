import type { AsBuilt } from '../records/as-built.ts'
import { type Advice, advise } from './advice.ts'
import { layOut, type ReconcileInput } from './case.ts'
import { type Consequence, consequenceOf } from './consequence.ts'
import { type DiscrepancyKind, SEVERITIES } from './kinds.ts'
import type { Outcome } from './outcome.ts'
import { CHECKS } from './register.ts'

/** A difference that someone has to know of, with its evidence and what it leads to. */
export type Discrepancy = Consequence & {
  /** Stable over re-runs: the kind, what it is about, and which of several such questions. */
  readonly key: string
  readonly kind: DiscrepancyKind
  readonly outcome: Outcome
}

export type Reconciliation = {
  readonly asOf: string
  readonly findings: string | null
  readonly asBuilt: AsBuilt
  /** Every question asked, whatever its end: what agrees, what differs, what could not be told. */
  readonly outcomes: readonly Outcome[]
  /** Worst first. Each has one of the outcomes. */
  readonly discrepancies: readonly Discrepancy[]
  readonly advice: readonly Advice[]
}

/**
 * What should be in the ground against what was found, under the rules in force. Pure: the same permits, corrections,
 * findings, rule book and day give the same answer to the byte.
 */
export function reconcile(input: ReconcileInput): Reconciliation {
  const given = layOut(input)
  const outcomes = CHECKS.flatMap((check) => check.run(given))
  return {
    asOf: input.asOf,
    findings: input.findings?.id ?? null,
    asBuilt: given.asBuilt,
    outcomes,
    discrepancies: discrepanciesOf(outcomes),
    advice: advise(given),
  }
}

/** What the outcomes raise, worst first. */
export const discrepanciesOf = (outcomes: readonly Outcome[]): readonly Discrepancy[] =>
  outcomes.flatMap(discrepancy).sort(worstFirst)

function discrepancy(outcome: Outcome): Discrepancy[] {
  const { raises: kind, subject, facet, check } = outcome
  if (kind === null) return []
  const question = kind === 'measurement-unclear' ? [check] : []
  const key = [kind, subject.key, ...question, ...(facet === null ? [] : [facet])].join(' | ')
  return [{ key, kind, outcome, ...consequenceOf(kind, outcome) }]
}

const worstFirst = (a: Discrepancy, b: Discrepancy): number =>
  SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity)
