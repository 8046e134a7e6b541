import type { SearchMethod } from '../../catalog/choices.ts'
import { partOnRecord } from '../../records/part.ts'
import { aboutPairing, firm, likely, seen } from '../about.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'

/** Ways of looking after which absence is as good as seen: the place itself was laid open or looked into. */
const CONCLUSIVE: readonly SearchMethod[] = ['excavation', 'camera', 'seen-through-opening']

/**
 * Only a search with a stated method that did not find a thing makes it missing. Not reached and not looked for are
 * no evidence, and end as `cannot-tell` with the reason.
 */
export const componentPresence = check({
  id: 'component-presence',
  raises: ['component-missing'],
  subjects: ({ pairings, findings }) => (findings ? pairings : []),
  about: aboutPairing,
  facts: {
    search: ({ built, found }, { findings }) => {
      const part = partOnRecord(built)
      if (!found || found.outcome === 'not-looked-for') return lacking({ gap: 'not-looked-for', part })
      if (found.outcome === 'not-reached')
        return lacking({ gap: 'not-reached', part, why: found.notReachedBecause ?? 'other' })
      const how = found.searchedBy[0] ?? 'seen'
      return known(found, seen(found, part, findings?.id ?? '', 'presence', { choice: found.outcome }, how))
    },
  },
  rules: {},
  decide({ search }) {
    if (search.outcome === 'found')
      return { verdict: 'agrees', raises: null, reason: { is: 'found' }, certainty: firm('seen') }
    const by = search.searchedBy
    return {
      verdict: 'differs',
      raises: 'component-missing',
      reason: { is: 'searched', by, within: search.searchedWithin?.asWritten ?? null },
      certainty: by.some((method) => CONCLUSIVE.includes(method)) ? firm('opened') : likely('surface-search'),
    }
  },
})
