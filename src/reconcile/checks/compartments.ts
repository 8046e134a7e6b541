import { over, scale } from '../../measure/uncertain.ts'
import { statedValue } from '../../records/claim.ts'
import { SYSTEM } from '../../records/part.ts'
import { rangeMet } from '../../rules/apply/range-met.ts'
import { requiredCompartments } from '../../rules/apply/required-compartments.ts'
import { derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { OCCASIONS, type Occasion } from '../asked-of-code.ts'
import { type Case, permittedTogether } from '../case.ts'
import { check } from '../check.ts'
import { type Fact, firstKnown, known, lacking } from '../fact.ts'
import { reading } from '../facts/found-length.ts'
import { bedroomsFor } from '../facts/household.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'
import type { Pairing } from '../pairing.ts'
import { exactly, measured } from '../quantity.ts'

const tanksIn = ({ pairings }: Pick<Case, 'pairings'>): readonly Pairing[] =>
  pairings.filter(({ built }) => built.kind === 'tank')

/** Compartments, or tanks in series, against the law of the tanks' day and today's; and the first one's share of the length. */
export const compartments = check({
  id: 'compartments',
  raises: ['construction-below-code'],
  subjects: (given): readonly Occasion[] => (tanksIn(given).length > 0 ? OCCASIONS : []),
  about: () => SYSTEM,
  facet: (occasion) => `compartments | ${occasion}`,
  facts: { count: (_, given) => counted(given) },
  rules: {
    rule: {
      name: 'tank.compartments-minimum',
      on: (occasion, given) =>
        occasion === 'today' ? given.asOf : permittedTogether(tanksIn(given), given.asBuilt),
    },
  },
  decide({ count }, { rule }, occasion, given) {
    const bedrooms = bedroomsFor(occasion, given)
    const gal = totalTankCapacity(given)
    const { minimum, unsure } = requiredCompartments(rule.value, {
      bedrooms: bedrooms.state === 'known' ? bedrooms.value : null,
      gal: gal.state === 'known' ? gal.value.gal.value : null,
    })
    const source = sourceOf(rule)
    const first = firstShare(given)
    const band = rule.value.firstShare
    const comes = count < minimum ? 'short' : unsure && count < most(rule.value.rows) ? 'too-close' : 'enough'
    const met = comes === 'enough' && band && first ? rangeMet(first.pct, share(band)) : null
    const offShare = met !== null && (met.value === 'under' || met.value === 'over')
    return {
      verdict:
        comes === 'short' || offShare ? 'falls-short' : comes === 'enough' ? 'suffices' : 'too-close-to-call',
      raises: comes === 'short' || offShare ? 'construction-below-code' : null,
      reason: {
        is: 'compartments',
        occasion,
        count,
        minimum,
        first:
          offShare && band && first
            ? {
                found: measured(first.pct, '%'),
                low: exactly(band.low * 100, '%'),
                high: exactly(band.high * 100, '%'),
              }
            : null,
        source,
        comes,
      },
      certainty:
        comes === 'too-close'
          ? open('reading-missing')
          : rule.verified === 'from-memory'
            ? likely('rule-not-verified')
            : firm('counted'),
      exhibits: [
        ...(first && met ? [derived('first-compartment', measured(first.pct, '%'))] : []),
        requiredBy('compartments', { count: minimum }, rule),
      ],
      steps: met?.steps ?? [],
    }
  },
})

const most = (rows: readonly { readonly minimum: number }[]): number =>
  Math.max(...rows.map(({ minimum }) => minimum))

const share = ({ low, high }: { readonly low: number; readonly high: number }) => ({
  unit: 'pct' as const,
  atLeast: low * 100,
  atMost: high * 100,
  moreThan: null,
  lessThan: null,
})

/** Of all tanks in service; one whose compartments nobody counted, on paper or in the ground, leaves the sum unknown. */
function counted(given: Case): Fact<number> {
  const facts = tanksIn(given).map(({ built, found }): Fact<number> => {
    const part = { ...SYSTEM }
    const seen = found?.compartments ?? null
    const stated = statedValue(built.measures.compartments)
    const asked: Fact<number> = lacking({ gap: 'not-measured', things: ['compartments'], part })
    return firstKnown<number>(seen === null ? asked : known(seen), stated === null ? asked : known(stated))
  })
  const unknown = facts.find(({ state }) => state !== 'known')
  if (unknown) return unknown
  const sum = facts.reduce((total, fact) => total + (fact.state === 'known' ? fact.value : 0), 0)
  return known(sum, derived('compartments', { count: sum }))
}

/** The first compartment's share of the inside length, of a single tank whose walls stand upright. */
function firstShare(given: Case) {
  const [tank, second] = tanksIn(given)
  const found = tank?.found
  if (!tank || second || !found?.firstCompartmentLength || !found.length) return null
  const taking = { part: SYSTEM, of: found.label, findings: given.findings?.id ?? '', alone: () => false }
  const first = reading(found.firstCompartmentLength, 'first-compartment', taking)
  const whole = reading(found.length, 'inside-length', taking)
  return whole.length.value > 0 ? { pct: scale(over(first.length, whole.length), 100) } : null
}
