import { estimates } from '../../geometry/position/estimate.ts'
import { samePlace } from '../../geometry/position/same-place.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, likely, open, type SeenPairing, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { foundPlace, recordedPlace } from '../facts/place.ts'
import { measured } from '../quantity.ts'

/** Once in ten times measurement alone puts one place that far apart: nearly a difference. */
const EDGE = 0.1

/**
 * Whether the readings of record and inspection can be of one place, by chi-square of what they leave over. Where a
 * side is not said, both mirror places count: the thing is elsewhere only if it is at neither.
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
    const apart = samePlace(recorded.located, found.located, significance.value.amount)
    const { distance, verdict, p } = apart.value
    const mirrored = estimates(recorded.located).length === 2
    const elsewhere = verdict === 'elsewhere'
    return {
      verdict: elsewhere ? 'differs' : 'agrees',
      raises: elsewhere ? 'position-differs' : null,
      reason: { is: 'apart', distance: measured(distance, 'ft'), elsewhere, mirrored },
      certainty: elsewhere
        ? firm({ onceIn: Math.min(Math.round(1 / p), 1e6) })
        : mirrored
          ? likely('one-of-two-places')
          : p < EDGE
            ? open('edge-of-tellable')
            : firm('within-ties'),
      steps: [...recorded.steps, ...found.steps, ...apart.steps],
    }
  },
})
