import { type Days, daysOf, laterOf, type PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { AsBuilt, AsBuiltComponent, Correction, PermitRef } from '../records/as-built.ts'
import type { SubmittedFindings } from '../records/findings.ts'
import { asBuiltOn } from '../records/fold.ts'
import type { FiledPermit } from '../records/permit.ts'
import type { RuleBook } from '../rules/book.ts'
import type { PlaceId } from '../rules/pack.ts'
import { type Paired, type Pairing, pair } from './pairing.ts'
import type { SystemGiven } from './system-given.ts'

/** All that a reconciliation is a function of. */
export type ReconcileInput = {
  readonly county: PlaceId
  /** The day the question is asked: what `today` means in every answer. */
  readonly asOf: PlainDate
  readonly permits: readonly FiledPermit[]
  readonly corrections: readonly Correction[]
  /** The inspection to compare with; null while there is none. */
  readonly findings: SubmittedFindings | null
  readonly book: RuleBook
  /** What is known of the system beside its papers, where it is not a parcel's only one. */
  readonly system?: SystemGiven
}

/** The input, laid out for the checks. */
export type Case = ReconcileInput &
  Paired & {
    /** The as-built on the day of the inspection; with no inspection, on `asOf`. */
    readonly asBuilt: AsBuilt
  }

export function layOut(input: ReconcileInput): Case {
  const asBuilt = asBuiltOn(
    input.permits,
    input.corrections,
    input.findings?.record.inspectedOn ?? input.asOf,
    input.system?.serves,
  )
  return { ...input, asBuilt, ...pair(asBuilt, input.findings?.record ?? null) }
}

/** What should be in use: neither replaced nor abandoned. */
export const componentsInService = (asBuilt: AsBuilt): readonly AsBuiltComponent[] =>
  asBuilt.components.filter(({ standing }) => standing === 'in-service')

/**
 * The permit date whose rules a component answers to: issue, else final approval, of the permit that put it in. Null
 * where no paper put it in and one only mentions it.
 */
export function permitDate(component: AsBuiltComponent): PartialDate | null {
  const [{ what, permit }] = component.events
  return what === 'mentioned' ? null : issueOf(permit)
}

/**
 * The day on which these parts, for these many bedrooms, were permitted: when the last of them was put in, or the
 * bedrooms were last set, whichever came later. A bedroom added under a permit is asked of that permit's code.
 */
export function permittedTogether(parts: readonly Pairing[], { bedrooms, loads }: AsBuilt): Days | null {
  const days = parts.map(({ built }) => permitDate(built))
  if (days.length === 0 || days.includes(null)) return null
  const designs = [bedrooms, ...(loads ?? []).map((it) => it.bedrooms)].map((claim) =>
    claim.state === 'stated' ? issueOf(claim.origin.permit) : null,
  )
  return [...days, ...designs].reduce<Days | null>(
    (latest, day) => (day === null ? latest : latest === null ? daysOf(day) : laterOf(latest, daysOf(day))),
    null,
  )
}

const issueOf = ({ issuedOn, approvedOn }: PermitRef): PartialDate | null => issuedOn ?? approvedOn
