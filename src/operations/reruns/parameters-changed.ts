import type { RuleBook } from '../../rules/book.ts'
import type { PlaceId } from '../../rules/pack.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import { hashOf } from '../../store/hash.ts'

/** The parameters on which two states of the rules differ for a place, in whatever way it could show in an answer. */
export function parametersChanged(
  before: RuleBook,
  now: RuleBook,
  place: PlaceId,
): ReadonlySet<ParameterName> {
  const [old, young] = [before.places.get(place)?.standings, now.places.get(place)?.standings]
  const names = new Set([...(old?.keys() ?? []), ...(young?.keys() ?? [])])
  return new Set([...names].filter((name) => hash(old?.get(name)) !== hash(young?.get(name))))
}

const hash = (standings: unknown): string => hashOf(standings ?? null)

/**
 * The same rules, noting which parameters are asked for. Who asks for none of those that changed gets the same answer
 * from both states of the rules: up to the first changed one every lookup answers alike.
 */
export function notingUse(
  book: RuleBook,
  place: PlaceId,
): { readonly book: RuleBook; readonly used: ReadonlySet<ParameterName> } {
  const used = new Set<ParameterName>()
  const rules = book.places.get(place)
  if (!rules) return { book, used }
  const standings = new Map(rules.standings)
  const get = standings.get.bind(standings)
  standings.get = (name) => {
    used.add(name)
    return get(name)
  }
  return { book: { ...book, places: new Map([[place, { ...rules, standings }]]) }, used }
}
