import type { Days } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import { isAbsorption } from '../../catalog/kinds.ts'
import { statedValue } from '../../records/claim.ts'
import { SYSTEM } from '../../records/part.ts'
import { OCCASIONS, type Occasion } from '../asked-of-code.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { claimFact } from '../fact.ts'
import { absorbingArea } from '../facts/absorbing-area.ts'
import { absorptionAnswer } from '../facts/absorption-answer.ts'
import { designFor, flowFor } from '../facts/household.ts'
import { exactly } from '../quantity.ts'

/** Area provided against the area the percolation table asks, for the permit's day and for today. */
export const absorptionAgainstCode = check({
  id: 'absorption-against-code',
  raises: ['absorption-below-code'],
  subjects: (): readonly Occasion[] => OCCASIONS,
  about: () => SYSTEM,
  facet: (occasion) => occasion,
  facts: {
    design: designFor,
    perc: (_, { asBuilt }) =>
      claimFact(asBuilt.percRateMpi, 'percRateMpi', SYSTEM, (rate) => exactly(rate, 'min/in')),
    area: (_, given) => absorbingArea(given, 'bottom'),
  },
  rules: {
    table: { name: 'absorption.perc-table', on: governingDay },
    flow: { name: 'design.flow-per-bedroom', on: governingDay, optional: true },
    tolerancePct: { name: 'absorption.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide: ({ design, perc, area }, { table, flow, tolerancePct }, occasion, given) =>
    absorptionAnswer({
      rule: 'absorption.perc-table',
      table,
      ground: { minutesPerInch: perc, soil: statedValue(given.asBuilt.soilTexture) },
      bedrooms: design.bedrooms,
      flowGpd: design.flowGpd ?? flowFor(occasion, given, design.bedrooms, flow),
      area,
      tolerancePct,
      occasion,
      given,
    }),
})

/** The day the absorption areas in service were permitted for the bedrooms on record, or today. */
export function governingDay(occasion: Occasion, { asOf, asBuilt, pairings }: Case): Days | PlainDate | null {
  if (occasion === 'today') return asOf
  return permittedTogether(
    pairings.filter(({ built }) => isAbsorption(built.kind)),
    asBuilt,
  )
}
