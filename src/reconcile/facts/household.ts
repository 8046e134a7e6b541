import { statedValue } from '../../records/claim.ts'
import { SYSTEM } from '../../records/part.ts'
import { flowFromBedrooms } from '../../rules/apply/design-flow.ts'
import type { DesignFlow } from '../../rules/values/design-flow.ts'
import type { Occasion } from '../asked-of-code.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, firstKnown, known, lacking } from '../fact.ts'
import { exactly } from '../quantity.ts'
import { showCount } from '../show.ts'

export const bedroomsOnRecord = ({ asBuilt }: Case): Fact<number> =>
  claimFact(asBuilt.bedrooms, 'bedrooms', SYSTEM, showCount)

/** Bedrooms by the inspection's count; not by any record. */
export function bedroomsCounted({ findings }: Case): Fact<number> {
  const count = findings?.record.bedroomsCounted ?? null
  if (!findings || count === null) return lacking({ gap: 'not-measured', things: ['bedrooms'], part: SYSTEM })
  return known(count, {
    thing: 'bedrooms',
    part: SYSTEM,
    word: 'found',
    asStated: null,
    used: showCount(count),
    from: { kind: 'inspection', findings: findings.id, component: null, how: 'counted' },
  })
}

/** The bedrooms a question goes by: as designed for the permit's day, as counted (else designed) for today. */
export const bedroomsFor = (occasion: Occasion, given: Case): Fact<number> =>
  occasion === 'when permitted'
    ? bedroomsOnRecord(given)
    : firstKnown(bedroomsCounted(given), bedroomsOnRecord(given))

/**
 * Daily design flow, gpd: for the permit's day as the permit states it, else by that day's rule; for today by today's
 * rule for today's bedrooms, since an old design flow says nothing of bedrooms added since. Null where nobody says.
 */
export function flowFor(
  occasion: Occasion,
  { asBuilt }: Case,
  bedrooms: number | null,
  rule: { readonly value: DesignFlow } | null,
): number | null {
  const stated = statedValue(asBuilt.designFlowGpd)
  const byRule = rule && bedrooms !== null ? flowFromBedrooms(rule.value, bedrooms) : null
  return occasion === 'when permitted' ? (stated ?? byRule) : (byRule ?? stated)
}

/** A building that is no dwelling: its permit states a flow and no bedrooms, and nobody counted any. */
export const designedByFlow = ({ asBuilt, findings }: Case): boolean =>
  asBuilt.bedrooms.state === 'silent' &&
  asBuilt.designFlowGpd.state !== 'silent' &&
  (findings?.record.bedroomsCounted ?? 0) === 0

export const flowOnRecord = ({ asBuilt }: Case): Fact<number> =>
  claimFact(asBuilt.designFlowGpd, 'designFlowGpd', SYSTEM, (gpd) => exactly(gpd, 'gpd'))

/** What a question about size goes by: bedrooms, or the flow that was stated in their place. */
export type Design = { readonly bedrooms: number | null; readonly flowGpd: number | null }

export function designFor(occasion: Occasion, given: Case): Fact<Design> {
  if (designedByFlow(given)) {
    const flow = flowOnRecord(given)
    return flow.state === 'known' ? { ...flow, value: { bedrooms: null, flowGpd: flow.value } } : flow
  }
  const bedrooms = bedroomsFor(occasion, given)
  return bedrooms.state === 'known'
    ? { ...bedrooms, value: { bedrooms: bedrooms.value, flowGpd: null } }
    : bedrooms
}
