import { isAbsorption } from '../../catalog/kinds.ts'
import { SYSTEM } from '../../records/part.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import { OCCASIONS, type Occasion } from '../asked-of-code.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { claimFact } from '../fact.ts'
import { absorbingArea } from '../facts/absorbing-area.ts'
import { absorptionAnswer } from '../facts/absorption-answer.ts'
import { designFor, flowFor } from '../facts/household.ts'
import { showChoice } from '../show.ts'
import { governingDay } from './absorption-against-code.ts'

/** Area provided against the area that the soil calls for, where no percolation test answers it. */
export const absorptionBySoil = check({
  id: 'absorption-by-soil',
  raises: ['absorption-below-code'],
  subjects: (given: Case): readonly Occasion[] =>
    OCCASIONS.filter(
      (occasion) =>
        given.pairings.some(({ built }) => isAbsorption(built.kind)) &&
        given.asBuilt.soilTexture.state !== 'silent' &&
        !answeredByTest(occasion, given),
    ),
  about: () => SYSTEM,
  facet: (occasion) => `soil | ${occasion}`,
  facts: {
    design: designFor,
    soil: (_, { asBuilt }) => claimFact(asBuilt.soilTexture, 'soilTexture', SYSTEM, showChoice),
    area: (_, given) => absorbingArea(given, 'bottom'),
  },
  rules: {
    table: { name: 'absorption.texture-table', on: governingDay },
    flow: { name: 'design.flow-per-bedroom', on: governingDay, optional: true },
    tolerancePct: { name: 'absorption.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide: ({ design, soil, area }, { table, flow, tolerancePct }, occasion, given) =>
    absorptionAnswer({
      rule: 'absorption.texture-table',
      table,
      ground: { minutesPerInch: null, soil },
      bedrooms: design.bedrooms,
      flowGpd: design.flowGpd ?? flowFor(occasion, given, design.bedrooms, flow),
      area,
      tolerancePct,
      occasion,
      given,
    }),
})

/** A percolation reading, and a table of the day that reads it. */
function answeredByTest(occasion: Occasion, given: Case): boolean {
  const day = governingDay(occasion, given)
  if (given.asBuilt.percRateMpi.state === 'silent' || day === null) return false
  return inForceThroughout(given.book, given.county, 'absorption.perc-table', day).state === 'in-force'
}
