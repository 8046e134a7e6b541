import { isAbsorption } from '../../catalog/kinds.ts'
import { absorptionArea } from '../../geometry/absorption/absorption-area.ts'
import type { AbsorptionShape, CountedSurface } from '../../geometry/absorption/absorption-shape.ts'
import { compareWithStated } from '../../measure/compare.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, allowed, derived, firm, likely, open } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { claimFact, lacking } from '../fact.ts'
import { absorbingShape, isAnother } from '../facts/absorbing-shape.ts'
import type { Pairing } from '../pairing.ts'
import { exactly, measured } from '../quantity.ts'

/** What a card may have counted: a pit its wall, with or without its floor; a trench or a bed its bottom, its sides, or both. */
const surfaces = (shape: AbsorptionShape): readonly CountedSurface[] =>
  shape.kind === 'pits'
    ? ['sidewall', 'bottom-and-sidewall']
    : 'effectiveDepth' in shape && shape.effectiveDepth
      ? ['bottom', 'bottom-and-sidewall', 'sidewall']
      : ['bottom']

/**
 * Whether the area that a permit states is the one that the dimensions come to. Cards do not say which surface they counted:
 * it agrees if any comes to it, and where none does, the difference is that of the surface nearest to it.
 */
export const statedArea = check({
  id: 'stated-area',
  raises: ['absorption-differs'],
  subjects: (given: Case): readonly Pairing[] =>
    given.pairings.filter(
      (pairing) =>
        isAbsorption(pairing.built.kind) &&
        !isAnother(pairing) &&
        pairing.built.measures.area.state !== 'silent' &&
        absorbingShape(pairing, given).state === 'known',
    ),
  about: aboutPairing,
  facts: {
    recorded: ({ built }) =>
      claimFact(built.measures.area, 'area', partOnRecord(built), (value) => exactly(value, 'sq ft')),
    shape: absorbingShape,
    usable: (pairing, given) => {
      const shape = absorbingShape(pairing, given)
      const area =
        shape.state === 'known' ? absorptionArea(shape.value.shape, surfaces(shape.value.shape)[0]!) : null
      return area && !area.ok
        ? lacking({ gap: 'impossible', part: partOnRecord(pairing.built), issues: area.error })
        : { state: 'known', value: null, exhibits: [] }
    },
  },
  rules: {
    tolerancePct: { name: 'absorption.nominal-tolerance-pct', on: (_, { asBuilt }) => asBuilt.on },
  },
  decide({ recorded, shape: { shape, measured: isMeasured } }, { tolerancePct }, pairing) {
    const tolerance = (recorded * tolerancePct.value.amount) / 100
    const rule = { tolerance, usableUncertainty: recorded * USABLE, unit: 'sq ft' }
    const counted = surfaces(shape).flatMap((surface) => {
      const area = absorptionArea(shape, surface)
      return area.ok
        ? [{ surface, area: area.value, compared: compareWithStated(area.value.value, recorded, rule) }]
        : []
    })
    const off = ({ compared }: (typeof counted)[number]): number =>
      compared.value.verdict === 'agrees' ? -1 : Math.abs(compared.value.difference)
    const { surface, area, compared } = counted.reduce((best, other) =>
      off(other) < off(best) ? other : best,
    )
    const { verdict } = compared.value
    const part = partOnRecord(pairing.built)
    const differs = verdict === 'smaller' || verdict === 'larger'
    return {
      verdict: differs ? 'differs' : verdict === 'agrees' ? 'agrees' : 'too-close-to-call',
      raises: differs ? 'absorption-differs' : null,
      reason: {
        is: 'absorption-record',
        computed: measured(area.value, 'sq ft'),
        recorded: exactly(recorded, 'sq ft'),
        tolerance: exactly(tolerance, 'sq ft'),
        by: isMeasured ? 'inspection' : 'record',
        surface,
        comes: verdict === 'cannot-tell' ? 'too-rough' : verdict,
      },
      certainty: differs
        ? firm('beyond-tolerance')
        : verdict === 'agrees'
          ? isMeasured
            ? firm('within-tolerance')
            : likely('as-stated')
          : open('too-rough'),
      exhibits: [
        derived('absorption-area', measured(area.value, 'sq ft'), part),
        allowed('nominal-tolerance', exactly(tolerancePct.value.amount, '%'), tolerancePct),
      ],
      steps: [
        ...area.steps,
        {
          says: 'Tolerance for what is dug',
          formula: 'T = stated × tolerance',
          numbers: `${recorded} × ${tolerancePct.value.amount} %`,
          result: `${Math.round(tolerance * 100) / 100} sq ft`,
        },
        ...compared.steps,
      ],
    }
  },
})

/** Dimensions rougher than a fifth of the area bear nothing out (common practice). */
const USABLE = 0.2
