import { firstDay, isWholeDay, lastDay } from '../base/partial-date.ts'
import { compareDates } from '../base/plain-date.ts'
import { SYSTEM_FIELDS } from '../catalog/catalog.ts'
import type { AsBuilt, Claim } from './as-built.ts'
import type { FiledPermit } from './permit.ts'

export type Folded = Omit<AsBuilt, 'on' | 'permits' | 'unapproved'>
type Ordered = {
  readonly permits: readonly FiledPermit[]
  readonly folded: Folded
  /** Two whose order the dates leave open, and it decides what is in the ground. */
  readonly unclear: readonly FiledPermit[]
}

/**
 * Approved permits in the order of their dates, folded. Where a date is known to the month or the year alone, both orders
 * of two permits that it leaves open are tried: one in which a permit changes what is not there yet is not the order.
 */
export function foldedInOrder(
  approved: readonly FiledPermit[],
  fold: (permits: readonly FiledPermit[]) => Folded,
): Ordered {
  const given = approved.toSorted(byDate)
  const asGiven: Ordered = { permits: given, folded: fold(given), unclear: [] }
  return openPairs(given).reduce((best, [a, b]) => {
    const permits = best.permits.map((it) => (it === a ? b : it === b ? a : it))
    const folded = fold(permits)
    const [these, those] = [folded.contradictions.length, best.folded.contradictions.length]
    if (these < those) return { permits, folded, unclear: best.unclear }
    const matters = these === those && inGround(folded) !== inGround(best.folded)
    return matters ? { permits: best.permits, folded: best.folded, unclear: best.unclear.concat(a, b) } : best
  }, asGiven)
}

function byDate(a: FiledPermit, b: FiledPermit): number {
  const issued = ({ record }: FiledPermit) => firstDay(record.issuedOn ?? record.approvedOn!)
  return (
    compareDates(firstDay(a.record.approvedOn!), firstDay(b.record.approvedOn!)) ||
    compareDates(issued(a), issued(b)) ||
    (a.record.number < b.record.number ? -1 : 1)
  )
}

/** Pairs of which one is dated to the month or the year, and the other may have come before it or after. */
function openPairs(permits: readonly FiledPermit[]): readonly (readonly [FiledPermit, FiledPermit])[] {
  return permits.flatMap((a, index) =>
    permits.slice(index + 1).flatMap((b) => {
      const [one, other] = [a.record.approvedOn!, b.record.approvedOn!]
      const vague = !isWholeDay(one) || !isWholeDay(other)
      return vague && firstDay(one) <= lastDay(other) && firstDay(other) <= lastDay(one)
        ? [[a, b] as const]
        : []
    }),
  )
}

/** What stands, whatever order it was put in. */
const inGround = (folded: Folded): string =>
  JSON.stringify([
    SYSTEM_FIELDS.map((name) => said(folded[name])),
    folded.components
      .toSorted((a, b) => (a.key < b.key ? -1 : 1))
      .map(({ key, standing, replacedBy, replaces, measures }) => [
        key,
        standing,
        replacedBy,
        [...replaces].sort(),
        Object.values(measures).map(said),
      ]),
  ])

/** What is stated, by whichever paper. */
function said(claim: Claim<unknown>): unknown {
  if (claim.state === 'stated') return claim.value
  return claim.state === 'contradictory'
    ? claim.claims.map(({ value }) => JSON.stringify(value)).sort()
    : claim.state
}
