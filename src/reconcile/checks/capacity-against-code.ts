import type { PlainDate } from '../../base/plain-date.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { printGal, printGalWithU } from '../../measure/print/gallons.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { the } from '../../records/naming.ts'
import { unread } from '../../rules/citation.ts'
import { requiredCapacity } from '../../rules/work/required-capacity.ts'
import { allowed, firm, likely, open, required as requiredBy, SYSTEM } from '../about.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { bedroomsFor, flowFor, OCCASIONS, type Occasion } from '../facts/household.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'
import { bestMeasurement } from '../settle.ts'

/**
 * Two separate questions: did the tank meet the table of its permit's day for the bedrooms it was designed for, and
 * does it meet today's table for today's bedrooms? A code's figure is a nominal size, so the nominal tolerance is taken
 * off it: a "750" tank built to a state's own table of dimensions computes to 733 gal.
 */
export const capacityAgainstCode = check({
  id: 'capacity-against-code',
  question: 'Is the tank as large as the code asks?',
  raises: ['capacity-below-code', 'measurement-unclear'],
  subjects: (): readonly Occasion[] => OCCASIONS,
  about: (_, { pairings }) => {
    const tanks = pairings.filter(({ built }) => built.kind === 'tank').map(({ built }) => built)
    return tanks.length === 1 ? { key: tanks[0]!.key, label: tanks[0]!.label, kind: 'tank' } : SYSTEM
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
        because: required.error.says,
        certainty: open(required.error.says),
      }
    }
    const nominal = required.value.value
    const least = nominal * (1 - tolerancePct.value.amount / 100)
    const compared = compareWithMinimum(capacity.gal, least, 'gal')
    const when = occasion === 'today' ? 'the code asks today' : 'the code asked when it was permitted'
    const because = `${holds(given)} ${printGalWithU(capacity.gal)} against the ${printGal(nominal)} that ${when} for ${bedrooms} bedrooms${unread(minimum)}`
    const exhibits = [
      requiredBy('least capacity', printGal(nominal), minimum),
      allowed('nominal tolerance', `${tolerancePct.value.amount} %`, tolerancePct),
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
          because,
          certainty: firm('beyond the expanded uncertainty'),
          exhibits,
          steps,
        }
      case 'falls-short':
        return {
          verdict: 'falls-short',
          raises: 'capacity-below-code',
          because,
          certainty:
            minimum.verified === 'from-memory'
              ? likely('beyond the expanded uncertainty, but the rule is cited from memory')
              : firm('beyond the expanded uncertainty'),
          exhibits,
          steps,
        }
      case 'too-close-to-call':
        return {
          verdict: 'too-close-to-call',
          raises: 'measurement-unclear',
          because: `${because}: too close to call`,
          certainty: open('the required size lies within the expanded uncertainty'),
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

function holds({ pairings }: Case): string {
  const tanks = pairings.filter(({ built }) => built.kind === 'tank')
  return tanks.length === 1 ? `${the(tanks[0]!.built.label)} comes to` : 'the tanks together come to'
}

/** The day the tanks in service were permitted for the bedrooms on record, or today. */
function governingDay(occasion: Occasion, { asOf, asBuilt, pairings }: Case): PlainDate | null {
  if (occasion === 'today') return asOf
  return permittedTogether(
    pairings.filter(({ built }) => built.kind === 'tank'),
    asBuilt,
  )
}
