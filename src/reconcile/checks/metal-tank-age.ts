import { addYears, yearOf } from '../../base/plain-date.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { statedValue } from '../../records/claim.ts'
import { the } from '../../records/naming.ts'
import { unread } from '../../rules/citation.ts'
import { aboutPairing, derived, firm, likely, required, seen } from '../about.ts'
import { permitDate } from '../case.ts'
import { check } from '../check.ts'
import { beside, claimFact, known, lacking } from '../fact.ts'
import { words } from './pipe.ts'

/** Where a rule presumes that a metal tank beyond an age has failed. Applies only where the county's packs say so. */
export const metalTankAge = check({
  id: 'metal-tank-age',
  question: 'Is a metal tank within the age the rule allows?',
  raises: ['condition-poor'],
  subjects: ({ pairings }) => pairings.filter(({ built }) => built.kind === 'tank'),
  about: aboutPairing,
  facet: () => 'age',
  facts: {
    steel: ({ built, found }, { findings }) => {
      const material = found?.material ?? statedValue(built.measures.material)
      if (material === null) return lacking(`nobody says what ${the(built.label)} is made of`)
      if (material !== 'steel') return beside(`${the(built.label)} is not of metal`)
      const what = `the material of ${the(built.label)}`
      return found?.material
        ? known(material, seen(found, findings?.id ?? '', what, words(material), 'seen by the inspector'))
        : claimFact(built.measures.material, what, words)
    },
    installed: ({ built }) => {
      const date = permitDate(built)
      return date === null ? lacking(`the record does not date ${the(built.label)}`) : known(date)
    },
  },
  rules: { limit: { name: 'tank.metal-age-limit-years', on: (_, { asBuilt }) => asBuilt.on } },
  decide({ installed }, { limit }, { built }, { asBuilt }) {
    const years = limit.value.amount
    const old = addYears(installed, years) < asBuilt.on
    return {
      verdict: old ? 'falls-short' : 'suffices',
      raises: old ? 'condition-poor' : null,
      because: `${the(built.label)} is of steel and was permitted in ${yearOf(installed)}; the rule presumes failure after ${printSignificant(years, 3)} years${unread(limit)}`,
      certainty: old ? likely('a presumption of the rule, not something seen') : firm('by the dates'),
      exhibits: [
        derived('permitted', installed),
        required('age of a metal tank, at most', `${printSignificant(years, 3)} years`, limit),
      ],
    }
  },
})
