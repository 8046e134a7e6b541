import { firstDay, lastDay } from '../../base/partial-date.ts'
import { daysBetween } from '../../base/plain-date.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { SYSTEM } from '../../records/part.ts'
import { pumpOutYears } from '../../rules/apply/pump-out-years.ts'
import { derived, likely, required, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { beside, type Fact, known, lacking } from '../fact.ts'
import { totalTankCapacity } from '../facts/total-capacity.ts'
import { exactly } from '../quantity.ts'

const YEAR = 365.25

/** Years since it was pumped against a table by tank size and people: what tells where nobody measured scum and sludge. */
export const pumpingInterval = check({
  id: 'pumping-interval',
  raises: ['solids-high'],
  subjects: ({ findings, pairings }) =>
    findings && pairings.some(({ built }) => built.kind === 'tank') ? ['system'] : [],
  about: () => SYSTEM,
  facet: () => 'years between pumpings',
  facts: {
    capacity: (_, given) => totalTankCapacity(given),
    pumped: (_, given) => measuredInstead(given) ?? asked('lastPumpedOn', given),
    people: (_, given) => asked('people', given),
  },
  rules: { table: { name: 'solids.pump-out-years', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ capacity, pumped, people }, { table }, _, given) {
    const { inspectedOn } = given.findings!.record
    const days = daysBetween(lastDay(pumped), inspectedOn)
    const since = days / YEAR
    const answer = pumpOutYears(table, capacity.gal.value, people)
    if (!answer.ok) {
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: {
          is: 'no-rule',
          rules: [{ state: 'silent', rule: 'solids.pump-out-years', silence: answer.error }],
        },
        certainty: { word: 'open', basis: 'undecided' },
      }
    }
    const { value: years, steps } = answer.value
    const due = since >= years
    if (!due && daysBetween(firstDay(pumped), inspectedOn) / YEAR >= years) {
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: { is: 'unknown', gaps: [{ gap: 'day-unclear', part: SYSTEM, on: pumped }] },
        certainty: { word: 'open', basis: 'undecided' },
      }
    }
    return {
      verdict: due ? 'falls-short' : 'suffices',
      raises: due ? 'solids-high' : null,
      reason: {
        is: 'pumping-interval',
        since: exactly(since, 'years'),
        years: exactly(years, 'years'),
        people,
        source: sourceOf(table),
        due,
      },
      certainty: likely('presumption'),
      exhibits: [
        derived('pumped-since', exactly(since, 'years')),
        required('pump-out-years', { limit: 'at-most', than: exactly(years, 'years') }, table),
      ],
      steps: [
        ...steps,
        {
          says: 'Since it was last pumped',
          formula: 'days / 365.25',
          numbers: `${days} / ${YEAR}`,
          result: `${printSignificant(since, 2)} years`,
        },
      ],
    }
  },
})

/** What was measured tells more than a table does. */
const measuredInstead = ({ findings }: Case): Fact<never> | null =>
  findings?.record.components.some(
    (it) => it.kind === 'tank' && (it.sludgeDepth ?? it.scumThickness) !== null,
  )
    ? beside({ aside: 'solids-measured' })
    : null

function asked<N extends 'lastPumpedOn' | 'people'>(
  name: N,
  { findings }: Case,
): Fact<NonNullable<NonNullable<Case['findings']>['record'][N]>> {
  const value = findings?.record[name] ?? null
  return value === null
    ? lacking({ gap: 'not-measured', things: [name], part: SYSTEM })
    : known(value as NonNullable<typeof value>)
}
