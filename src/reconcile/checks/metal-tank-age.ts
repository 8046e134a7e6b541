import { firstDay, lastDay, yearIn } from '../../base/partial-date.ts'
import { addYears } from '../../base/plain-date.ts'
import { statedValue } from '../../records/claim.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, derived, firm, likely, open, required, seen, sourceOf } from '../about.ts'
import { permitDate } from '../case.ts'
import { check } from '../check.ts'
import { beside, claimFact, known, lacking } from '../fact.ts'
import { exactly } from '../quantity.ts'
import { showChoice } from '../show.ts'

/** Where a rule presumes that a metal tank beyond an age has failed. Applies only where the county's packs say so. */
export const metalTankAge = check({
  id: 'metal-tank-age',
  raises: ['condition-poor'],
  subjects: ({ pairings }) => pairings.filter(({ built }) => built.kind === 'tank'),
  about: aboutPairing,
  facet: () => 'age',
  facts: {
    steel: ({ built, found }, { findings }) => {
      const part = partOnRecord(built)
      const material = found?.material ?? statedValue(built.measures.material)
      if (material === null) return lacking({ gap: 'material-unknown', part })
      if (material !== 'steel') return beside({ aside: 'not-metal', part })
      return found?.material
        ? known(material, seen(found, part, findings?.id ?? '', 'material', showChoice(material)))
        : claimFact(built.measures.material, 'material', part, showChoice)
    },
    installed: ({ built }) => {
      const date = permitDate(built)
      return date === null ? lacking({ gap: 'undated', part: partOnRecord(built) }) : known(date)
    },
  },
  rules: { limit: { name: 'tank.metal-age-limit-years', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ installed }, { limit }, { built }, { asBuilt }) {
    const years = limit.value.amount
    const old = addYears(lastDay(installed), years) < asBuilt.on
    if (!old && addYears(firstDay(installed), years) < asBuilt.on) {
      return {
        verdict: 'cannot-tell',
        raises: null,
        reason: { is: 'unknown', gaps: [{ gap: 'day-unclear', part: partOnRecord(built), on: installed }] },
        certainty: open('undecided'),
      }
    }
    return {
      verdict: old ? 'falls-short' : 'suffices',
      raises: old ? 'condition-poor' : null,
      reason: {
        is: 'metal-age',
        permitted: yearIn(installed),
        limit: exactly(years, 'years'),
        source: sourceOf(limit),
        old,
      },
      certainty: old ? likely('presumption') : firm('by-dates'),
      exhibits: [
        derived('permitted', { day: installed }),
        required('age-limit', { limit: 'at-most', than: exactly(years, 'years') }, limit),
      ],
    }
  },
})
