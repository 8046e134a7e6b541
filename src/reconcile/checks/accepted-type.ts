import type { Material } from '../../catalog/choices.ts'
import { statedValue } from '../../records/claim.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import { firm, likely, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'
import { type InUse, inUse, type OnOccasion, onEach, ruleDay } from '../occasion.ts'
import { showChoice } from '../show.ts'

/** What a rule may not accept: a cesspool, a privy, or a tank laid up of block, brick or stone. */
const TYPES = {
  cesspool: { rule: 'cesspool.accepted', is: ({ part }: InUse) => part.kind === 'cesspool' },
  privy: { rule: 'privy.accepted', is: ({ part }: InUse) => part.kind === 'privy' },
  'masonry-tank': {
    rule: 'tank.masonry-accepted',
    is: ({ part, built, found }: InUse) =>
      part.kind === 'tank' &&
      MASONRY.includes((found?.material ?? (built && statedValue(built.measures.material))) as Material),
  },
} as const
const MASONRY: readonly Material[] = ['concrete-block', 'brick', 'stone']
type Type = keyof typeof TYPES

type Question = InUse & OnOccasion & { readonly type: Type }

/**
 * A cesspool, a privy or a masonry tank by the law of its day and today's. What was lawful when it was built may stay unless today's
 * law says what becomes of those that are there: replaced when they fail, at a transfer, or at once.
 */
export const acceptedType = check({
  id: 'accepted-type',
  raises: ['type-not-accepted'],
  subjects: (given): readonly Question[] =>
    onEach(
      (Object.keys(TYPES) as Type[]).flatMap((type) =>
        inUse(given)
          .filter((it) => it.found?.outcome !== 'not-found' && TYPES[type].is(it))
          .map((it) => ({ ...it, type })),
      ),
      given,
    ).filter((it) => ruleOf(it, given) !== null),
  about: ({ part }) => part,
  facet: ({ occasion }) => occasion,
  facts: {
    rule: (it, given) =>
      known(ruleOf(it, given)!, {
        thing: 'kind',
        part: it.part,
        word: it.found ? 'found' : 'stated',
        asStated: null,
        used: showChoice(it.type),
        from: { kind: 'computed' },
      }),
  },
  rules: {},
  decide({ rule }, _, { type, occasion }) {
    const { holds, detail, existing } = rule.value
    return {
      verdict: holds ? 'suffices' : 'falls-short',
      raises: holds ? null : 'type-not-accepted',
      reason: { is: 'accepted', type, occasion, accepted: holds, detail, existing, source: sourceOf(rule) },
      certainty: rule.verified === 'from-memory' ? likely('rule-not-verified') : firm('seen'),
      citations: rule.citations,
    }
  },
})

function ruleOf(it: InUse & OnOccasion & { readonly type: Type }, { book, county }: Case) {
  const day = ruleDay(it)
  const rule = day === null ? null : inForceThroughout(book, county, TYPES[it.type].rule, day)
  return rule?.state === 'in-force' ? rule : null
}
