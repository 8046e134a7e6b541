import { isNonEmpty } from '../../base/non-empty.ts'
import type { LoadOfParcel } from '../../records/as-built.ts'
import { SYSTEM } from '../../records/part.ts'
import { flowFromBedrooms } from '../../rules/apply/design-flow.ts'
import type { DesignFlow } from '../../rules/values/design-flow.ts'
import type { Occasion } from '../asked-of-code.ts'
import type { Case } from '../case.ts'
import { claimFact, type Fact, firstKnown, known, lacking } from '../fact.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly } from '../quantity.ts'
import { showCount } from '../show.ts'
import type { Shown } from '../thing.ts'

export const bedroomsOnRecord = ({ asBuilt }: Case): Fact<number> =>
  asBuilt.loads
    ? allTogether(asBuilt.loads, 'bedrooms', showCount)
    : claimFact(asBuilt.bedrooms, 'bedrooms', SYSTEM, showCount)

/**
 * What several parcels put on one system, together: each by what the county says, else by the permits of its file. Where
 * one of them is not known neither is the sum, and that one is what to ask for.
 */
function allTogether(
  loads: readonly LoadOfParcel[],
  name: 'bedrooms' | 'designFlowGpd',
  show: (value: number) => Shown,
): Fact<number> {
  const each = loads.map((load) => {
    const said = load.said[name]
    return said === null ? claimFact(load[name], name, SYSTEM, show) : known(said)
  })
  const doubt = each.find(({ state }) => state === 'doubtful')
  if (doubt) return doubt
  const unknown = loads.flatMap(({ parcel }, at) => (each[at]!.state === 'known' ? [] : [parcel]))
  if (isNonEmpty(unknown)) return lacking({ gap: 'share-unknown', thing: name, parcels: unknown })
  const shares = each.flatMap((it) => (it.state === 'known' ? [it] : []))
  const sum = shares.reduce((total, { value }) => total + value, 0)
  const total: Exhibit = {
    thing: name,
    part: SYSTEM,
    word: 'derived',
    asStated: null,
    used: show(sum),
    from: { kind: 'computed' },
  }
  return known(sum, ...shares.flatMap(({ exhibits }) => exhibits), total)
}

const showFlow = (gpd: number) => exactly(gpd, 'gpd')

/** The sum where all of it is known. */
const flowStated = (given: Case): number | null => {
  const flow = flowOnRecord(given)
  return flow.state === 'known' ? flow.value : null
}

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
  given: Case,
  bedrooms: number | null,
  rule: { readonly value: DesignFlow } | null,
): number | null {
  const stated = flowStated(given)
  const byRule = rule && bedrooms !== null ? flowFromBedrooms(rule.value, bedrooms) : null
  return occasion === 'when permitted' ? (stated ?? byRule) : (byRule ?? stated)
}

/** A building that is no dwelling: its permit states a flow and no bedrooms, and nobody counted any. */
export const designedByFlow = ({ asBuilt, findings }: Case): boolean =>
  (asBuilt.loads ? asBuilt.loads.some(byFlowAlone) : byFlowAlone({ ...asBuilt, said: UNSAID })) &&
  (findings?.record.bedroomsCounted ?? 0) === 0

const UNSAID: LoadOfParcel['said'] = { bedrooms: null, designFlowGpd: null }

const byFlowAlone = ({ bedrooms, designFlowGpd, said }: Omit<LoadOfParcel, 'parcel'>): boolean =>
  bedrooms.state === 'silent' &&
  said.bedrooms === null &&
  (designFlowGpd.state !== 'silent' || said.designFlowGpd !== null)

export const flowOnRecord = ({ asBuilt }: Case): Fact<number> =>
  asBuilt.loads
    ? allTogether(asBuilt.loads, 'designFlowGpd', showFlow)
    : claimFact(asBuilt.designFlowGpd, 'designFlowGpd', SYSTEM, showFlow)

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
