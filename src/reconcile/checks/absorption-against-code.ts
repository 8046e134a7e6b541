import type { PlainDate } from '../../base/plain-date.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { printWithU } from '../../measure/print/gallons.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { statedValue } from '../../records/claim.ts'
import { isAbsorption } from '../../records/component.ts'
import { unread } from '../../rules/citation.ts'
import { requiredAbsorption } from '../../rules/work/required-absorption.ts'
import { derived, firm, likely, open, required as requiredBy, SYSTEM } from '../about.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { claimFact } from '../fact.ts'
import { absorbingArea } from '../facts/absorbing-area.ts'
import { bedroomsFor, flowFor, OCCASIONS, type Occasion } from '../facts/household.ts'

/** Area provided against the area the percolation table asks, for the permit's day and for today. */
export const absorptionAgainstCode = check({
  id: 'absorption-against-code',
  question: 'Is the absorption area as large as the code asks?',
  raises: ['absorption-below-code'],
  subjects: (): readonly Occasion[] => OCCASIONS,
  about: () => SYSTEM,
  facet: (occasion) => occasion,
  facts: {
    bedrooms: bedroomsFor,
    perc: (_, { asBuilt }) =>
      claimFact(asBuilt.percRateMpi, 'the percolation rate', (rate) => `${rate} min/in`),
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
        because: required.error.says,
        certainty: open(required.error.says),
      }
    }
    const recounted = absorbingArea(given, required.value.value.counts)
    const provided = recounted.state === 'known' ? recounted.value : area
    const least = required.value.value.sqFt
    const compared = compareWithMinimum(provided.sqFt, least, 'sq ft')
    const when = occasion === 'today' ? 'the code asks today' : 'the code asked when it was permitted'
    const because = `${printWithU(provided.sqFt, 'sq ft')} of absorption area against the ${printSignificant(least, 4)} sq ft that ${when} for ${bedrooms} bedrooms at ${perc} min/in${unread(table)}`
    const exhibits = [
      derived('absorption area', printWithU(provided.sqFt, 'sq ft')),
      requiredBy('absorption area', `${printSignificant(least, 4)} sq ft`, table),
    ]
    const steps = [...provided.steps, ...required.value.steps, ...compared.steps]
    const { verdict } = compared.value
    return {
      verdict,
      raises: verdict === 'falls-short' ? 'absorption-below-code' : null,
      because: verdict === 'too-close-to-call' ? `${because}: too close to call` : because,
      certainty:
        verdict === 'too-close-to-call'
          ? open('the required area lies within the expanded uncertainty')
          : table.verified === 'from-memory'
            ? likely('beyond the expanded uncertainty, but the rule is cited from memory')
            : firm('beyond the expanded uncertainty'),
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
