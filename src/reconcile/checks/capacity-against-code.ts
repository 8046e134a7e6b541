import type { PlainDate } from '../../base/plain-date.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { printGal } from '../../measure/print/gallons.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { partOnRecord, SYSTEM } from '../../records/part.ts'
import { requiredCapacity } from '../../rules/apply/required-capacity.ts'
import { allowed, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { type AgainstLeast, OCCASIONS, type Occasion } from '../asked-of-code.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { bedroomsFor, flowFor } from '../facts/household.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'
import { exactly, measured } from '../quantity.ts'
import { bestMeasurement } from '../settle.ts'

/**
 * Two separate questions: did the tank meet the table of its permit's day for the bedrooms it was designed for, and
 * does it meet today's table for today's bedrooms? A code's figure is a nominal size, so the nominal tolerance is taken
 * off it: a "750" tank built to a state's own table of dimensions computes to 733 gal.
 */
export const capacityAgainstCode = check({
  id: 'capacity-against-code',
  raises: ['capacity-below-code', 'measurement-unclear'],
  subjects: (): readonly Occasion[] => OCCASIONS,
  about: (_, { pairings }) => {
    const [tank, second] = tanksIn(pairings)
    return tank && !second ? partOnRecord(tank.built) : SYSTEM
  },
  facet: (occasion) => occasion,
  facts: { bedrooms: bedroomsFor, capacity: (_, given) => totalTankCapacity(given) },
  rules: {
    minimum: { name: 'tank.minimum-capacity', on: governingDay },
    flow: { name: 'design.flow-per-bedroom', on: governingDay, optional: true },
    tolerancePct: { name: 'tank.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide({ bedrooms, capacity }, { minimum, flow, tolerancePct }, occasion, given) {
    const required = requiredCapacity(minimum, {
      bedrooms,
      flowGpd: flowFor(occasion, given, bedrooms, flow),
    })
    if (!required.ok) {
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: {
          is: 'no-rule',
          rules: [{ state: 'silent', rule: 'tank.minimum-capacity', silence: required.error }],
        },
        certainty: open('undecided'),
      }
    }
    const nominal = required.value.value
    const least = nominal * (1 - tolerancePct.value.amount / 100)
    const compared = compareWithMinimum(capacity.gal, least, 'gal')
    const reason = (comes: AgainstLeast) => ({
      is: 'capacity-code' as const,
      occasion,
      tanks: tanksIn(given.pairings).length,
      found: measured(capacity.gal, 'gal'),
      least: exactly(nominal, 'gal'),
      bedrooms,
      source: sourceOf(minimum),
      comes,
    })
    const exhibits = [
      requiredBy('least-capacity', exactly(nominal, 'gal'), minimum),
      allowed('nominal-tolerance', exactly(tolerancePct.value.amount, '%'), tolerancePct),
    ]
    const steps = [
      ...capacity.steps,
      ...required.value.steps,
      {
        says: 'The required size is nominal: less the nominal tolerance',
        formula: 'least = required · (1 − tolerance)',
        numbers: `${printSignificant(nominal, 6)} × (1 − ${tolerancePct.value.amount} %)`,
        result: printGal(least),
      },
      ...compared.steps,
    ]
    switch (compared.value.verdict) {
      case 'suffices':
        return {
          verdict: 'suffices',
          raises: null,
          reason: reason('enough'),
          certainty: firm('beyond-uncertainty'),
          exhibits,
          steps,
        }
      case 'falls-short':
        return {
          verdict: 'falls-short',
          raises: 'capacity-below-code',
          reason: reason('short'),
          certainty:
            minimum.verified === 'from-memory' ? likely('rule-not-verified') : firm('beyond-uncertainty'),
          exhibits,
          steps,
        }
      case 'too-close-to-call':
        return {
          verdict: 'too-close-to-call',
          raises: 'measurement-unclear',
          reason: reason('too-close'),
          certainty: open('within-uncertainty'),
          exhibits,
          steps,
          wouldSettle: bestMeasurement(
            capacity,
            'gal',
            (after) => compareWithMinimum(after, least, 'gal').value.verdict !== 'too-close-to-call',
          ),
        }
    }
  },
})

const tanksIn = (pairings: Case['pairings']) => pairings.filter(({ built }) => built.kind === 'tank')

/** The day the tanks in service were permitted for the bedrooms on record, or today. */
function governingDay(occasion: Occasion, { asOf, asBuilt, pairings }: Case): PlainDate | null {
  if (occasion === 'today') return asOf
  return permittedTogether(tanksIn(pairings), asBuilt)
}
