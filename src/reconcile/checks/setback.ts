import { offset } from '../../geometry/position/point.ts'
import { compareWithMinimum } from '../../measure/compare.ts'
import { printLengthWithU } from '../../measure/print/length.ts'
import { propagate } from '../../measure/uncertain.ts'
import { isAbsorption } from '../../records/component.ts'
import { isOrAre, the } from '../../records/naming.ts'
import { requiredSetback } from '../../rules/work/required-setback.ts'
import { firm, open } from '../about.ts'
import { type Case, permitDate } from '../case.ts'
import { check } from '../check.ts'
import type { Fact } from '../fact.ts'
import { firstKnown } from '../fact.ts'
import { foundPlace, type Place, recordedPlace } from '../facts/place.ts'
import type { Pairing } from '../pairing.ts'

type Between = { readonly from: Pairing; readonly well: Pairing }

/**
 * Horizontal distance from each tank and absorption area to each well, from where they were found (else recorded),
 * against the table of the permit's day. Where ties leave two places, the nearer one counts and the answer says so.
 */
export const setback = check({
  id: 'setback',
  question: 'Is it far enough from the well?',
  raises: ['setback-short'],
  subjects: between,
  about: ({ from: { built } }) => ({ key: built.key, label: built.label, kind: built.kind }),
  facet: ({ well }) => `to ${well.built.label}`,
  facts: {
    here: ({ from }, given) => placeOf(from, given),
    there: ({ well }, given) => placeOf(well, given),
  },
  rules: { table: { name: 'setbacks', on: ({ from }) => permitDate(from.built) } },
  decide({ here, there }, { table }, { from, well }) {
    const kind = isAbsorption(from.built.kind) ? from.built.kind : 'tank'
    const required = requiredSetback(table, kind, 'private-well')
    if (!required.ok) {
      return {
        verdict: 'does-not-apply',
        raises: null,
        because: required.error.says,
        certainty: open(required.error.says),
      }
    }
    const distances = here.points.flatMap((a) =>
      there.points.map((b) => {
        const { x, y } = offset(a, b)
        const far = Math.hypot(x.value, y.value)
        return propagate(far, [x, y], far === 0 ? [1, 0] : [x.value / far, y.value / far])
      }),
    )
    const nearest = distances.reduce((best, other) => (other.value < best.value ? other : best))
    const least = required.value.value.ft
    const compared = compareWithMinimum(nearest, least, 'ft')
    const ambiguous =
      distances.length > 1 ? '; a side is not said, so the nearer of the possible places counts' : ''
    const because = `${the(from.built.label)} ${isOrAre(from.built.label)} ${printLengthWithU(nearest)} from ${the(well.built.label)}; the rule asks for ${least} ft${ambiguous}`
    const steps = [...here.steps, ...there.steps, ...required.value.steps, ...compared.steps]
    const { verdict } = compared.value
    const short = verdict === 'falls-short' && distances.length === 1
    return {
      verdict: verdict === 'falls-short' && !short ? 'too-close-to-call' : verdict,
      raises: short ? 'setback-short' : null,
      because,
      certainty:
        verdict === 'too-close-to-call' || ambiguous
          ? open('the distance is not known well enough')
          : firm('beyond the expanded uncertainty'),
      steps,
    }
  },
})

function between({ pairings }: Case): readonly Between[] {
  const wells = pairings.filter(({ built }) => built.kind === 'well')
  const parts = pairings.filter(({ built }) => built.kind === 'tank' || isAbsorption(built.kind))
  return parts.flatMap((from) => wells.map((well) => ({ from, well })))
}

const placeOf = ({ built, found }: Pairing, given: Case): Fact<Place> =>
  found && given.findings && found.tie
    ? firstKnown(foundPlace(found, given.findings, built.reference), recordedPlace(built, given))
    : recordedPlace(built, given)
