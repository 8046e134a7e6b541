import type { Condition } from '../../catalog/choices.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { beside, known } from '../fact.ts'

/** What keeps a component from doing its work, or will soon. Wear that does not is a note in the findings. */
export const FAILING: readonly Condition[] = ['leaking', 'broken', 'collapsed', 'blocked']
export const WEAKENED: readonly Condition[] = ['cracked', 'corroded']

export const condition = check({
  id: 'condition',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, condition: seenAs }) => outcome === 'found' && seenAs !== null,
    ),
  about: aboutSeen,
  facts: {
    seenAs: (found, given) => {
      const part = aboutSeen(found, given)
      if (given.former.some((old) => old.found === found)) return beside({ aside: 'out-of-service', part })
      const choice = found.condition as Condition
      const id = given.findings?.id ?? ''
      return known(choice, seen(found, part, id, 'condition', { choice }, 'seen', found.conditionWords))
    },
  },
  rules: {},
  decide({ seenAs }, _, found) {
    const poor = FAILING.includes(seenAs) || WEAKENED.includes(seenAs)
    return {
      verdict: poor ? 'differs' : 'agrees',
      raises: poor ? 'condition-poor' : null,
      reason: { is: 'condition', seen: seenAs, words: found.conditionWords },
      certainty: firm('seen'),
    }
  },
})
