import { compareWithMinimum } from '../../measure/compare.ts'
import { notIn } from '../../measure/expanded-steps.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { requiredCapacity } from '../../rules/apply/required-capacity.ts'
import { allowed, firm, likely, open, required as requiredBy, sourceOf } from '../about.ts'
import type { AgainstLeast, Occasion } from '../asked-of-code.ts'
import type { Decision, InForceNow } from '../check.ts'
import { exactly, measured } from '../quantity.ts'
import { bestMeasurement } from '../settle.ts'
import type { Capacity } from './capacity.ts'
import type { Design } from './household.ts'

type Asked = {
  readonly rule: 'tank.minimum-capacity' | 'tank.minimum-capacity-by-flow'
  readonly minimum: InForceNow<'tank.minimum-capacity'> | InForceNow<'tank.minimum-capacity-by-flow'>
  readonly tolerancePct: InForceNow<'tank.nominal-tolerance-pct'>
  readonly capacity: Capacity
  readonly design: Design
  readonly tanks: number
  readonly occasion: Occasion
}

/**
 * What the tanks hold against a table of least sizes. A code's figure is a nominal size, so the nominal tolerance is taken
 * off it: a "750" tank built to a state's own table of dimensions computes to 733 gal.
 */
export function capacityAnswer({
  rule,
  minimum,
  tolerancePct,
  capacity,
  design,
  tanks,
  occasion,
}: Asked): Decision {
  const required = requiredCapacity(minimum, design)
  if (!required.ok) {
    return {
      verdict: 'cannot-tell',
      raises: null,
      reason: {
        is: 'no-rule',
        rules: [{ state: 'silent', rule, silence: required.error }],
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
    tanks,
    found: measured(capacity.gal, 'gal'),
    least: exactly(nominal, 'gal'),
    bedrooms: design.bedrooms,
    ...(design.bedrooms === null && design.flowGpd !== null ? { flow: exactly(design.flowGpd, 'gpd') } : {}),
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
      result: `${printSignificant(least, 6)} gal`,
    },
    ...notIn(capacity.steps, compared.steps),
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
}
