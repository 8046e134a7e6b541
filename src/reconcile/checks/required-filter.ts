import type { SearchMethod } from '../../catalog/choices.ts'
import type { Part } from '../../records/part.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import { firm, likely, seen, sourceOf } from '../about.ts'
import type { Case } from '../case.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'
import { type InUse, inUse, type OnOccasion, onEach, ruleDay } from '../occasion.ts'

const CONCLUSIVE: readonly SearchMethod[] = ['excavation', 'camera', 'seen-through-opening']

type Question = InUse & OnOccasion & { readonly filter: Part }

/** A filter that the law of the tank's day, or today's, requires in its outlet. One on record is a question of its own. */
export const requiredFilter = check({
  id: 'required-filter',
  raises: ['component-missing'],
  subjects: (given: Case): readonly Question[] => {
    if (given.pairings.some(({ built }) => built.kind === 'effluent-filter')) return []
    const [last] = inUse(given)
      .filter(({ part }) => part.kind === 'tank')
      .slice(-1)
    return last ? onEach([{ ...last, filter: filterOf(last.part, given) }], given).filter(arises) : []
  },
  about: ({ filter }) => filter,
  facet: ({ occasion }) => occasion,
  facts: {
    search: ({ filter }, given) => {
      const found = filterFound(given)
      if (!found || found.outcome === 'not-looked-for')
        return lacking({ gap: 'not-looked-for', part: filter })
      if (found.outcome === 'not-reached')
        return lacking({ gap: 'not-reached', part: filter, why: found.notReachedBecause ?? 'other' })
      const how = found.searchedBy[0] ?? 'seen'
      return known(
        found,
        seen(found, filter, given.findings?.id ?? '', 'presence', { choice: found.outcome }, how),
      )
    },
    inspected: (_, { findings }) => (findings ? known(findings) : lacking({ gap: 'no-inspection' })),
  },
  rules: { rule: { name: 'effluent-filter.required', on: ruleDay } },
  decide({ search }, { rule }, { occasion }) {
    const there = search.outcome === 'found'
    const short = rule.value.holds && !there
    const by = search.searchedBy
    return {
      verdict: short ? 'falls-short' : 'suffices',
      raises: short ? 'component-missing' : null,
      reason: {
        is: 'required-part',
        occasion,
        required: rule.value.holds,
        there,
        detail: rule.value.detail,
        source: sourceOf(rule),
      },
      certainty:
        rule.verified === 'from-memory'
          ? likely('rule-not-verified')
          : there
            ? firm('seen')
            : by.some((method) => CONCLUSIVE.includes(method))
              ? firm('opened')
              : likely('surface-search'),
    }
  },
})

/** Where no rule requires one there is nothing to ask; where only today's does, not having looked is no question either. */
function arises({ given, occasion, ...it }: Question): boolean {
  const day = ruleDay({ given, occasion, ...it })
  const rule =
    day === null ? null : inForceThroughout(given.book, given.county, 'effluent-filter.required', day)
  if (rule?.state !== 'in-force' || !rule.value.holds) return false
  return occasion === 'when permitted' || filterFound(given) !== undefined
}

const filterFound = ({ unrecorded }: Case) => unrecorded.find(({ kind }) => kind === 'effluent-filter')

/** What was found or looked for by itself; else the filter that would stand in this tank. */
function filterOf(tank: Part, given: Case): Part {
  const found = filterFound(given)
  return {
    key: found ? `found/${found.label}` : `${tank.key}/filter`,
    kind: 'effluent-filter',
    label: found?.label ?? 'effluent filter',
    mark: null,
    onRecord: false,
  }
}
