import { compareWithMinimum } from '../../measure/compare.ts'
import { SYSTEM } from '../../records/part.ts'
import { requiredCapacity } from '../../rules/apply/required-capacity.ts'
import { inForce } from '../../rules/in-force.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import { firm } from '../about.ts'
import type { Load } from '../burdens.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, known, lacking } from '../fact.ts'
import { bedroomsOnRecord, flowFor } from '../facts/household.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'
import { exactly, type Quantity } from '../quantity.ts'

/** What a load comes to: what there is, against what the system was made for. Null where the load alone decides. */
type Weighed = { readonly over: boolean; readonly has: Quantity | null; readonly needs: Quantity | null }

/**
 * Loads that a system was not made for: a disposer where the tank is large enough only without one, clear water from a sump, a
 * roof or a footing, more water by the meter than the design flow. They come before the drainfield fails, and go more cheaply.
 */
export const loads = check({
  id: 'loads',
  raises: ['load-above-design'],
  subjects: ({ findings }: Case): readonly Load[] => {
    const { disposer, clearWater, waterUseGpd } = findings?.record ?? {}
    return [
      ...(disposer ? (['disposer'] as const) : []),
      ...(clearWater ? (['clear-water'] as const) : []),
      ...((waterUseGpd ?? null) !== null ? (['water-use'] as const) : []),
    ]
  },
  about: () => SYSTEM,
  facet: (load) => load,
  facts: { weighed: (load, given) => weigh(load, given) },
  rules: {},
  decide: ({ weighed: { over, has, needs } }, _, load) => ({
    verdict: over ? 'falls-short' : 'suffices',
    raises: over ? 'load-above-design' : null,
    reason: { is: 'load', load, over, has, needs },
    certainty: firm('seen'),
  }),
})

function weigh(load: Load, given: Case): Fact<Weighed> {
  switch (load) {
    case 'clear-water':
      return known({ over: true, has: null, needs: null })
    case 'water-use':
      return byMeter(given)
    case 'disposer':
      return withDisposer(given)
  }
}

/** The meter against the flow that the system was designed for. */
function byMeter(given: Case): Fact<Weighed> {
  const bedrooms = bedroomsOnRecord(given)
  const rule = inForce(given.book, given.county, 'design.flow-per-bedroom', given.asOf)
  const flow = flowFor(
    'when permitted',
    given,
    bedrooms.state === 'known' ? bedrooms.value : null,
    rule.state === 'in-force' ? rule : null,
  )
  if (flow === null) return lacking({ gap: 'not-on-record', thing: 'designFlowGpd', part: SYSTEM })
  const used = given.findings!.record.waterUseGpd!
  return known({ over: used > flow, has: exactly(used, 'gpd'), needs: exactly(flow, 'gpd') })
}

/** By the table of the tank's day, else today's: enough without a disposer, and short of what it asks with one. */
function withDisposer(given: Case): Fact<Weighed> {
  const capacity = totalTankCapacity(given)
  if (capacity.state !== 'known') return capacity
  const bedrooms = bedroomsOnRecord(given)
  if (bedrooms.state !== 'known') return bedrooms
  const tanks = given.pairings.filter(({ built }) => built.kind === 'tank')
  const days = [permittedTogether(tanks, given.asBuilt), given.asOf].filter((day) => day !== null)
  for (const day of days) {
    const rule = inForceThroughout(given.book, given.county, 'tank.minimum-capacity', day)
    if (rule.state !== 'in-force') continue
    const house = { bedrooms: bedrooms.value, flowGpd: null }
    const plain = requiredCapacity(rule, house)
    const burdened = requiredCapacity(rule, { ...house, burdens: ['garbage-grinder'] })
    if (!plain.ok || !burdened.ok || burdened.value.value <= plain.value.value) continue
    const { gal } = capacity.value
    const over = compareWithMinimum(gal, burdened.value.value, 'gal').value.verdict === 'falls-short'
    return known({ over, has: exactly(gal.value, 'gal'), needs: exactly(burdened.value.value, 'gal') })
  }
  return known({ over: false, has: null, needs: null })
}
