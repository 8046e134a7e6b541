import type { PlainDate } from '../../base/plain-date.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { statedValue } from '../../records/claim.ts'
import { isAbsorption } from '../../records/component.ts'
import { SYSTEM } from '../../records/part.ts'
import { requiredAbsorption } from '../../rules/apply/required-absorption.ts'
import { derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { claimFact } from '../fact.ts'
import { absorbingArea } from '../facts/absorbing-area.ts'
import { bedroomsFor, flowFor } from '../facts/household.ts'
import { exactly, measured } from '../quantity.ts'
import { AGAINST_LEAST, OCCASIONS, type Occasion } from '../reason.ts'

/** Area provided against the area the percolation table asks, for the permit's day and for today. */
export const absorptionAgainstCode = check({
  id: 'absorption-against-code',
  raises: ['absorption-below-code'],
  subjects: (): readonly Occasion[] => OCCASIONS,
  about: () => SYSTEM,
  facet: (occasion) => occasion,
  facts: {
    bedrooms: bedroomsFor,
    perc: (_, { asBuilt }) =>
      claimFact(asBuilt.percRateMpi, 'percRateMpi', SYSTEM, (rate) => exactly(rate, 'min/in')),
    area: (_, given) => absorbingArea(given, 'bottom'),
  },
  rules: {
    table: { name: 'absorption.perc-table', on: governingDay },
    flow: { name: 'design.flow-per-bedroom', on: governingDay, optional: true },
  },
  decide({ bedrooms, perc, area }, { table, flow }, occasion, given) {
    const required = requiredAbsorption(table, {
      minutesPerInch: perc,
      soil: statedValue(given.asBuilt.soilTexture),
      bedrooms,
      flowGpd: flowFor(occasion, given, bedrooms, flow),
      bed: area.bed,
    })
    if (!required.ok) {
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: {
          is: 'no-rule',
          rules: [{ state: 'silent', rule: 'absorption.perc-table', silence: required.error }],
        },
        certainty: open('undecided'),
      }
    }
    const recounted = absorbingArea(given, required.value.value.counts)
    const provided = recounted.state === 'known' ? recounted.value : area
    const least = required.value.value.sqFt
    const compared = compareWithMinimum(provided.sqFt, least, 'sq ft')
    const exhibits = [
      derived('absorption-area', measured(provided.sqFt, 'sq ft')),
      requiredBy('absorption-area', exactly(least, 'sq ft'), table),
    ]
    const steps = [...provided.steps, ...required.value.steps, ...compared.steps]
    const { verdict } = compared.value
    return {
      verdict,
      raises: verdict === 'falls-short' ? 'absorption-below-code' : null,
      reason: {
        is: 'absorption-code',
        occasion,
        provided: measured(provided.sqFt, 'sq ft'),
        least: exactly(least, 'sq ft'),
        bedrooms,
        perc: exactly(perc, 'min/in'),
        source: sourceOf(table),
        comes: AGAINST_LEAST[verdict],
      },
      certainty:
        verdict === 'too-close-to-call'
          ? open('within-uncertainty')
          : table.verified === 'from-memory'
            ? likely('rule-not-verified')
            : firm('beyond-uncertainty'),
      exhibits,
      steps,
    }
  },
})

/** The day the absorption areas in service were permitted for the bedrooms on record, or today. */
function governingDay(occasion: Occasion, { asOf, asBuilt, pairings }: Case): PlainDate | null {
  if (occasion === 'today') return asOf
  return permittedTogether(
    pairings.filter(({ built }) => isAbsorption(built.kind)),
    asBuilt,
  )
}
