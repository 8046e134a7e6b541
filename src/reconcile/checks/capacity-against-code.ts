import type { Days } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import { partOnRecord, SYSTEM } from '../../records/part.ts'
import { OCCASIONS, type Occasion } from '../asked-of-code.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { capacityAnswer } from '../facts/capacity-answer.ts'
import { bedroomsFor, designedByFlow, flowFor, flowOnRecord } from '../facts/household.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'

/**
 * Two separate questions: did the tank meet the table of its permit's day for the bedrooms it was designed for, and
 * does it meet today's table for today's bedrooms?
 */
export const capacityAgainstCode = check({
  id: 'capacity-against-code',
  raises: ['capacity-below-code', 'measurement-unclear'],
  subjects: (given: Case): readonly Occasion[] => (designedByFlow(given) ? [] : OCCASIONS),
  about: (_, given) => aboutTanks(given),
  facet: (occasion) => occasion,
  facts: { bedrooms: bedroomsFor, capacity: (_, given) => totalTankCapacity(given) },
  rules: {
    minimum: { name: 'tank.minimum-capacity', on: governingDay },
    flow: { name: 'design.flow-per-bedroom', on: governingDay, optional: true },
    tolerancePct: { name: 'tank.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide: ({ bedrooms, capacity }, { minimum, flow, tolerancePct }, occasion, given) =>
    capacityAnswer({
      rule: 'tank.minimum-capacity',
      minimum,
      tolerancePct,
      capacity,
      design: { bedrooms, flowGpd: flowFor(occasion, given, bedrooms, flow) },
      tanks: tanksIn(given).length,
      occasion,
    }),
})

/** The same of a restaurant, a school or a shop, which has no bedrooms: by the flow that its permit states. */
export const capacityByFlow = check({
  id: 'capacity-by-flow',
  raises: ['capacity-below-code', 'measurement-unclear'],
  subjects: (given: Case): readonly Occasion[] => (designedByFlow(given) ? OCCASIONS : []),
  about: (_, given) => aboutTanks(given),
  facet: (occasion) => `flow | ${occasion}`,
  facts: {
    flowGpd: (_, given) => flowOnRecord(given),
    capacity: (_, given) => totalTankCapacity(given),
  },
  rules: {
    minimum: { name: 'tank.minimum-capacity-by-flow', on: governingDay },
    tolerancePct: { name: 'tank.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide: ({ flowGpd, capacity }, { minimum, tolerancePct }, occasion, given) =>
    capacityAnswer({
      rule: 'tank.minimum-capacity-by-flow',
      minimum,
      tolerancePct,
      capacity,
      design: { bedrooms: null, flowGpd },
      tanks: tanksIn(given).length,
      occasion,
    }),
})

const tanksIn = ({ pairings }: Case) => pairings.filter(({ built }) => built.kind === 'tank')

function aboutTanks(given: Case) {
  const [tank, second] = tanksIn(given)
  return tank && !second ? partOnRecord(tank.built) : SYSTEM
}

/** The day the tanks in service were permitted for the bedrooms on record, or today. */
function governingDay(occasion: Occasion, given: Case): Days | PlainDate | null {
  return occasion === 'today' ? given.asOf : permittedTogether(tanksIn(given), given.asBuilt)
}
