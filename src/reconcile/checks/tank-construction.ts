import { rangeMet } from '../../rules/apply/range-met.ts'
import { derived, firm, likely, open, required, sourceOf } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { type BuiltAs, builtAs, ends } from '../facts/built-as.ts'
import { inUse, onEach, type Tank } from '../occasion.ts'
import { measured } from '../quantity.ts'

const VERDICTS = {
  met: 'suffices',
  under: 'falls-short',
  over: 'falls-short',
  'too-close': 'too-close-to-call',
} as const

/**
 * How a tank is built against the law of its day and today's: depth of liquid, air over it, walls, the drop from inlet to
 * outlet, how deep its devices reach. A tank that was lawful when it was permitted is told about today's law and asked
 * for nothing.
 */
export const tankConstruction = check({
  id: 'tank-construction',
  raises: ['construction-below-code'],
  subjects: (given): readonly BuiltAs[] =>
    onEach(
      inUse(given).filter((it): it is Tank => it.found?.kind === 'tank' && it.found.outcome === 'found'),
      given,
    ).flatMap(builtAs),
  about: ({ part }) => part,
  facet: ({ construction, occasion }) => `${construction} | ${occasion}`,
  facts: { as: ({ as, exhibits }) => known(as, ...exhibits) },
  rules: {},
  decide({ as }, _, { construction, occasion, rule, part }) {
    const { value: comes, steps } = rangeMet(as, rule.value)
    const unit = rule.value.unit === 'pct' ? '%' : 'in'
    const band = ends(rule.value)
    const verdict = VERDICTS[comes]
    const source = sourceOf(rule)
    return {
      verdict,
      raises: verdict === 'falls-short' ? 'construction-below-code' : null,
      reason: {
        is: 'construction',
        construction,
        occasion,
        found: measured(as, unit),
        ...band,
        source,
        comes,
      },
      certainty:
        comes === 'too-close'
          ? open('within-uncertainty')
          : rule.verified === 'from-memory'
            ? likely('rule-not-verified')
            : firm('beyond-uncertainty'),
      exhibits: [
        derived(construction, measured(as, unit), part),
        ...(band.low
          ? [required(construction, { limit: 'at-least' as const, than: band.low }, rule, part)]
          : []),
        ...(band.high
          ? [required(construction, { limit: 'at-most' as const, than: band.high }, rule, part)]
          : []),
      ],
      steps,
      citations: rule.citations,
    }
  },
})
