import { chiSquareAbove, chiSquareQuantile } from '../../geometry/position/chi-square.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { minus, standardUncertainty } from '../../measure/uncertain.ts'
import { aboutPairing, firm, open, type SeenPairing, wasSeen } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { asDrawn, isStated, statedFact, tapedAcross, tapedFact } from '../facts/direct-distance.ts'
import { KEPT_FROM, KEPT_FROM_NAMES, type KeptFrom } from '../kept-from.ts'
import { measured } from '../quantity.ts'

type StatedAndTaped = { readonly pairing: SeenPairing; readonly from: KeptFrom }

const keptOf = ({ built, found }: SeenPairing) => ({ kind: built.kind, built, found })

/** Once in ten times measurement alone puts one distance that far off: nearly a difference. */
const EDGE = 0.1

/**
 * Whether a distance that a permit states is the one that the inspection taped: their difference against its own uncertainty,
 * the permit's as record drawings are off, the tape's as tapes are.
 */
export const statedDistance = check({
  id: 'stated-distance',
  raises: ['position-differs'],
  subjects: ({ pairings }: Case): readonly StatedAndTaped[] =>
    pairings.filter(wasSeen).flatMap((pairing) => {
      const kept = keptOf(pairing)
      return KEPT_FROM_NAMES.filter((from) => isStated(kept, from) && tapedAcross(kept, from) !== null).map(
        (from) => ({ pairing, from }),
      )
    }),
  about: ({ pairing }) => aboutPairing(pairing),
  facet: ({ from }) => from,
  facts: {
    stated: ({ pairing, from }, given) => {
      const { built } = pairing
      const { field } = KEPT_FROM[from]
      const claim = built.measures[field]
      const fact = statedFact(built, keptOf(pairing), from, given)
      return fact.state === 'known' && claim.state === 'stated'
        ? known(asDrawn(claim.value, built, field, given), ...fact.exhibits)
        : fact
    },
    taped: ({ pairing, from }, given) => tapedFact(pairing.found, keptOf(pairing), from, given),
  },
  rules: { significance: { name: 'position.significance', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ stated, taped }, { significance }, { from }) {
    const difference = minus(taped, stated)
    const [d, u] = [difference.value, standardUncertainty(difference)]
    const q = u === 0 ? (d === 0 ? 0 : Number.POSITIVE_INFINITY) : (d / u) ** 2
    const limit = chiSquareQuantile(significance.value.amount, 1)
    const p = chiSquareAbove(q, 1)
    const differs = q > limit
    const n = printSignificant
    const [z, k] = [Math.abs(d) / u, Math.sqrt(limit)]
    return {
      verdict: differs ? 'differs' : 'agrees',
      raises: differs ? 'position-differs' : null,
      reason: {
        is: 'distance-record',
        to: from,
        found: measured(taped, 'ft'),
        recorded: measured(stated, 'ft'),
        comes: !differs ? 'agrees' : d < 0 ? 'nearer' : 'farther',
      },
      certainty: differs
        ? firm({ onceIn: Math.min(Math.round(1 / p), 1e6) })
        : p < EDGE
          ? open('edge-of-tellable')
          : firm('within-uncertainty-of-both'),
      steps: [
        {
          says: 'Difference from what is stated',
          formula: 'd = found − stated',
          numbers: `${n(taped.value, 6)} ft − ${n(stated.value, 6)} ft`,
          result: `${n(d, 6)} ft`,
        },
        {
          says: 'Standard uncertainty of the difference',
          formula: 'u = √(u²(found) + u²(stated))',
          numbers: `√(${n(standardUncertainty(taped), 6)}² + ${n(standardUncertainty(stated), 6)}²)`,
          result: `${n(u, 4)} ft`,
        },
        {
          says: `Verdict, against ${n(k, 4)}, which measurement alone stays below ${n(significance.value.amount * 100)} % of the time`,
          formula: differs ? '|d| ÷ u > k' : '|d| ÷ u ≤ k',
          numbers: `${n(z, 4)} ${differs ? '>' : '≤'} ${n(k, 4)}`,
          result: differs ? 'differs' : 'agrees',
        },
      ],
    }
  },
})
