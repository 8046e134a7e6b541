import type { Condition } from '../../records/findings.ts'
import { isOrAre, the } from '../../records/naming.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { beside, known } from '../fact.ts'

/** What keeps a component from doing its work, or will soon. Wear that does not is a note in the findings. */
export const FAILING: readonly Condition[] = ['leaking', 'broken', 'collapsed', 'blocked']
export const WEAKENED: readonly Condition[] = ['cracked', 'corroded']

export const condition = check({
  id: 'condition',
  question: 'Is it sound?',
  raises: ['condition-poor'],
  subjects: ({ findings }) =>
    (findings?.record.components ?? []).filter(
      ({ outcome, condition: seenAs }) => outcome === 'found' && seenAs !== null,
    ),
  about: aboutSeen,
  facts: {
    seenAs: (found, { findings, former }) =>
      former.some((old) => old.found === found)
        ? beside(
            `${the(found.label)} ${isOrAre(found.label)} out of service: crushed and filled is how it should be`,
          )
        : known(
            found.condition as Condition,
            seen(
              found,
              findings?.id ?? '',
              `condition of ${found.label}`,
              found.conditionWords ?? `${found.condition}`,
              'seen by the inspector',
            ),
          ),
  },
  rules: {},
  decide({ seenAs }, _, found) {
    const because = `${the(found.label)} ${isOrAre(found.label)} ${seenAs}${found.conditionWords ? `: ${found.conditionWords}` : ''}`
    const poor = FAILING.includes(seenAs) || WEAKENED.includes(seenAs)
    return {
      verdict: poor ? 'differs' : 'agrees',
      raises: poor ? 'condition-poor' : null,
      because,
      certainty: firm('seen by the inspector'),
    }
  },
})
