import { distanceBetween } from '../../geometry/position/distance-between.ts'
import { printLengthWithU } from '../../measure/print/length.ts'
import { itOrThem, the, wasOrWere } from '../../records/naming.ts'
import { aboutPairing, firm, likely, open, type SeenPairing, wasSeen } from '../about.ts'
import { check } from '../check.ts'
import { foundPlace, recordedPlace } from '../facts/place.ts'

/**
 * Recorded and found ties, each to a place with its error, and the distance between the two against what measurement
 * alone would explain (chi-square with two degrees of freedom). Where a side is not said, both mirror places count: the
 * thing is elsewhere only if it is at neither.
 */
export const position = check({
  id: 'position',
  question: 'Is it where the ties put it?',
  raises: ['position-differs'],
  subjects: ({ pairings }): readonly SeenPairing[] => pairings.filter(wasSeen),
  about: aboutPairing,
  facts: {
    recorded: ({ built }, given) => recordedPlace(built, given),
    found: ({ built, found }, { findings }) => foundPlace(found, findings!, built.reference),
  },
  rules: {
    significance: { name: 'position.significance', on: (_, { asBuilt }) => asBuilt.on },
    accuracy: {
      name: 'position.record-accuracy-ft',
      on: ({ built }) => built.events[0].permit.approvedOn,
      optional: true,
    },
  },
  decide({ recorded, found }, { significance }, { built }) {
    const apart = recorded.points.flatMap((from) =>
      found.points.map((to) => distanceBetween(from, to, significance.value.amount)),
    )
    const nearest = apart.reduce((best, other) => (other.value.squared < best.value.squared ? other : best))
    const { distance, verdict, p } = nearest.value
    const far = printLengthWithU(distance)
    const mirrored = recorded.points.length === 2
    const two = mirrored
      ? '; the record names no side, so both places that its ties meet at were compared'
      : ''
    const steps = [...recorded.steps, ...found.steps, ...nearest.steps]
    if (verdict === 'elsewhere') {
      return {
        verdict: 'differs',
        raises: 'position-differs',
        because: `${the(built.label)} ${wasOrWere(built.label)} found ${far} from where the record's ties put ${itOrThem(built.label)}${two}`,
        certainty: firm(`measurement alone would put it that far off once in ${oneIn(p)}`),
        steps,
      }
    }
    return {
      verdict: 'agrees',
      raises: null,
      because: `${the(built.label)} ${wasOrWere(built.label)} found ${far} from where the record's ties put ${itOrThem(built.label)}, no farther than measurement explains${two}`,
      certainty: mirrored
        ? likely('one of the two places that the ties meet at')
        : distance.value > nearest.value.leastTellableFt
          ? open('at the edge of what can be told')
          : firm('within the error of the ties'),
      steps,
    }
  },
})

const oneIn = (p: number): string =>
  p < 1e-6 ? 'more than a million times' : `${Math.round(1 / p).toLocaleString('en-US')} times`
