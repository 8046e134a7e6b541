import { compareWithMinimum } from '../../measure/compare.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type AbsorptionFacts, requiredAbsorption } from '../../rules/apply/required-absorption.ts'
import type { PercTable } from '../../rules/values/perc-table.ts'
import type { TextureTable } from '../../rules/values/texture-table.ts'
import { allowed, derived, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import { AGAINST_LEAST, type Occasion } from '../asked-of-code.ts'
import type { Case } from '../case.ts'
import type { Decision, InForceNow } from '../check.ts'
import { exactly, measured } from '../quantity.ts'
import { type AbsorbingArea, absorbingArea } from './absorbing-area.ts'

type Asked = {
  readonly rule: 'absorption.perc-table' | 'absorption.texture-table'
  readonly table: { readonly value: PercTable | TextureTable } & Pick<
    InForceNow<'absorption.perc-table'>,
    'citations' | 'verified'
  >
  readonly ground: Pick<AbsorptionFacts, 'minutesPerInch' | 'soil'>
  readonly bedrooms: number | null
  readonly flowGpd: number | null
  readonly area: AbsorbingArea
  readonly tolerancePct: InForceNow<'absorption.nominal-tolerance-pct'>
  readonly occasion: Occasion
  readonly given: Case
}

/** Area provided against the area that a table asks of this ground, by percolation or by soil. */
export function absorptionAnswer({
  rule,
  table,
  ground,
  bedrooms,
  flowGpd,
  area,
  tolerancePct,
  occasion,
  given,
}: Asked): Decision {
  const { bed, pit, gravelIn } = area
  const asked = { ...ground, bedrooms, flowGpd, bed, pit, gravelIn }
  const required = requiredAbsorption(table as Parameters<typeof requiredAbsorption>[0], asked)
  if (!required.ok) {
    return {
      verdict: 'cannot-tell',
      raises: null,
      reason: { is: 'no-rule', rules: [{ state: 'silent', rule, silence: required.error }] },
      certainty: open('undecided'),
    }
  }
  const recounted = absorbingArea(given, required.value.value.counts)
  const provided = recounted.state === 'known' ? recounted.value : area
  const least = required.value.value.sqFt
  const nominal = least * (1 - tolerancePct.value.amount / 100)
  const compared = compareWithMinimum(provided.sqFt, nominal, 'sq ft')
  const { verdict } = compared.value
  const { minutesPerInch } = ground
  return {
    verdict,
    raises: verdict === 'falls-short' ? 'absorption-below-code' : null,
    reason: {
      is: 'absorption-code',
      occasion,
      provided: measured(provided.sqFt, 'sq ft'),
      least: exactly(least, 'sq ft'),
      bedrooms,
      ...(bedrooms === null && flowGpd !== null ? { flow: exactly(flowGpd, 'gpd') } : {}),
      perc: minutesPerInch === null ? null : exactly(minutesPerInch, 'min/in'),
      ...(minutesPerInch === null ? { soil: ground.soil } : {}),
      source: sourceOf(table),
      comes: AGAINST_LEAST[verdict],
    },
    certainty:
      verdict === 'too-close-to-call'
        ? open('within-uncertainty')
        : table.verified === 'from-memory'
          ? likely('rule-not-verified')
          : firm('beyond-uncertainty'),
    exhibits: [
      derived('absorption-area', measured(provided.sqFt, 'sq ft')),
      requiredBy('absorption-area', exactly(least, 'sq ft'), table),
      allowed('nominal-tolerance', exactly(tolerancePct.value.amount, '%'), tolerancePct),
    ],
    steps: [
      ...provided.steps,
      ...required.value.steps,
      {
        says: 'The required area is the design’s: less the tolerance for what is dug',
        formula: 'least = required · (1 − tolerance)',
        numbers: `${printSignificant(least, 6)} × (1 − ${tolerancePct.value.amount} %)`,
        result: `${printSignificant(nominal, 6)} sq ft`,
      },
      ...compared.steps,
    ],
  }
}
