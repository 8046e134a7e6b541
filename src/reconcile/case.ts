import type { PlainDate } from '../base/plain-date.ts'
import type { AsBuilt, AsBuiltComponent, Correction } from '../records/as-built.ts'
import type { SubmittedFindings } from '../records/findings.ts'
import { asBuiltOn } from '../records/fold.ts'
import type { FiledPermit } from '../records/permit.ts'
import type { RuleBook } from '../rules/book.ts'
import type { PlaceId } from '../rules/pack.ts'
import { type Paired, pair } from './pairing.ts'

/** All that a reconciliation is a function of. */
export type ReconcileInput = {
  readonly county: PlaceId
  /** The day the question is asked: what `today` means in every answer. */
  readonly asOf: PlainDate
  readonly permits: readonly FiledPermit[]
  readonly corrections: readonly Correction[]
  /** The visit to compare with; null while there is none. */
  readonly findings: SubmittedFindings | null
  readonly book: RuleBook
}

/** The input, laid out for the checks. */
export type Case = ReconcileInput &
  Paired & {
    /** The as-built on the day of the visit; with no visit, on `asOf`. */
    readonly asBuilt: AsBuilt
  }

export function layOut(input: ReconcileInput): Case {
  const asBuilt = asBuiltOn(input.permits, input.corrections, input.findings?.record.visitedOn ?? input.asOf)
  return { ...input, asBuilt, ...pair(asBuilt, input.findings?.record ?? null) }
}

/** What should be in use: neither replaced nor abandoned. */
export const componentsInService = (asBuilt: AsBuilt): readonly AsBuiltComponent[] =>
  asBuilt.components.filter(({ standing }) => standing === 'in-service')

/** The permit date whose rules a component answers to: issue, else final approval, of the permit that put it in. */
export function permitDate(component: AsBuiltComponent): PlainDate | null {
  const { issuedOn, approvedOn } = component.events[0].permit
  return issuedOn ?? approvedOn
}
