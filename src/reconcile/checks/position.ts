import { distanceBetween } from '../../geometry/position/distance-between.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, likely, open, type SeenPairing, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { foundPlace, recordedPlace } from '../facts/place.ts'
import { measured } from '../quantity.ts'

/**
 * Recorded and found ties, each to a place with its error, and the distance between the two against what measurement
 * alone would explain (chi-square with two degrees of freedom). Where a side is not said, both mirror places count: the
 * thing is elsewhere only if it is at neither.
 */
export const position = check({
  id: 'position',
  raises: ['position-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] => pairings.filter(wasSeen),
  about: aboutPairing,
  facts: {
    recorded: ({ built }, given) => recordedPlace(built, given),
    found: ({ built, found }, { findings }) =>
      foundPlace(found, { reference: built.reference, part: partOnRecord(built) }, findings!),
  },
  rules: {
    significance: { name: 'position.significance', on: (_, { asBuilt }) => asBuilt.on },
    accuracy: {
      name: 'position.record-accuracy-ft',
      on: ({ built }) => built.events[0].permit.approvedOn,
      optional: true,
    },
  },
  decide({ recorded, found }, { significance }) {
    const apart = recorded.points.flatMap((from) =>
      found.points.map((to) => distanceBetween(from, to, significance.value.amount)),
    )
    const nearest = apart.reduce((best, other) => (other.value.squared < best.value.squared ? other : best))
    const { distance, verdict, p, leastTellableFt } = nearest.value
    const mirrored = recorded.points.length === 2
    const elsewhere = verdict === 'elsewhere'
    return {
      verdict: elsewhere ? 'differs' : 'agrees',
      raises: elsewhere ? 'position-differs' : null,
      reason: { is: 'apart', distance: measured(distance, 'ft'), elsewhere, mirrored },
      certainty: elsewhere
        ? firm({ onceIn: Math.min(Math.round(1 / p), 1e6) })
        : mirrored
          ? likely('one-of-two-places')
          : distance.value > leastTellableFt
            ? open('edge-of-tellable')
            : firm('within-ties'),
      steps: [...recorded.steps, ...found.steps, ...nearest.steps],
    }
  },
})
