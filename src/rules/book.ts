import type { NonEmpty } from '../base/non-empty.ts'
import { type Entry, JURISDICTION_KINDS, type Pack, type PackId, type PlaceId, placeOf } from './pack.ts'
import type { ParameterName, ValueOf } from './parameters.ts'
import { ALWAYS, overlap, type Span } from './span.ts'

/** One entry as a place sees it: the days it holds there (its own, within those of the adoption), and how near it is. */
export type Standing<Name extends ParameterName = ParameterName> = {
  readonly pack: PackId
  readonly kind: Pack['jurisdiction']['kind']
  readonly governedBy: Pack['parameters'][number]['governedBy']
  readonly invented: boolean
  readonly during: Span
  readonly entry: Entry<ValueOf<Name>>
}

/** A pack within reach of a place, on the days it was adopted there. */
export type Layer = { readonly pack: Pack; readonly during: Span }

type PlaceRules = {
  readonly layers: readonly Layer[]
  readonly standings: ReadonlyMap<ParameterName, NonEmpty<Standing>>
}

/** Every pack, laid out by place: nearest layer first, so that a lookup is a walk down a short list. */
export type RuleBook = {
  readonly packs: ReadonlyMap<PackId, Pack>
  readonly places: ReadonlyMap<PlaceId, PlaceRules>
}

/** Every pack that `pack` reaches, itself first, then what it extends or adopts in the order written, deep first. */
function reach(pack: Pack, packs: ReadonlyMap<PackId, Pack>, during: Span, path: readonly PackId[]): Layer[] {
  const layers: Layer[] = [{ pack, during }]
  const follow = (id: PackId, span: Span): void => {
    const next = packs.get(id)
    const days = overlap(during, span)
    if (next && days && !path.includes(id)) layers.push(...reach(next, packs, days, [...path, id]))
  }
  for (const adopted of pack.adoption) for (const id of adopted.packs) follow(id, adopted)
  for (const id of pack.extends) follow(id, ALWAYS)
  return layers
}

/** County over state over model code and so on; within a kind, the order in which the packs name each other. */
const byNearness = (layers: readonly Layer[]): readonly Layer[] =>
  JURISDICTION_KINDS.flatMap((kind) => layers.filter(({ pack }) => pack.jurisdiction.kind === kind))

function standingsOf(layers: readonly Layer[]): PlaceRules['standings'] {
  const standings = new Map<ParameterName, [Standing, ...Standing[]]>()
  for (const { pack, during: adopted } of layers)
    for (const { name, governedBy, entries } of pack.parameters)
      for (const entry of entries) {
        const during = overlap(entry, adopted)
        if (during === null) continue
        const standing: Standing = {
          pack: pack.pack,
          kind: pack.jurisdiction.kind,
          invented: pack.invented,
          governedBy,
          during,
          entry,
        }
        const list = standings.get(name)
        if (list) list.push(standing)
        else standings.set(name, [standing])
      }
  return standings
}

/** Our own conventions lie beneath every place, whether its packs name them or not: a check that needs one can ask. */
const below = (reached: readonly Layer[], packs: ReadonlyMap<PackId, Pack>): readonly Layer[] =>
  [...packs.values()]
    .filter(({ pack }) => placeOf(pack) === CONVENTIONS && !reached.some((it) => it.pack.pack === pack))
    .map((pack) => ({ pack, during: ALWAYS }))

/** The place of the conventions. */
const CONVENTIONS = 'conventions'

/** Lays out packs that are already known to be sound (see `parse/parse-packs.ts`); unknown pack ids are skipped. */
export function ruleBook(list: readonly Pack[]): RuleBook {
  const packs = new Map(list.map((pack) => [pack.pack, pack]))
  const places = new Map<PlaceId, PlaceRules>()
  for (const place of new Set(list.map(({ pack }) => placeOf(pack)))) {
    const own = list.filter(({ pack }) => placeOf(pack) === place)
    const reached = own.flatMap((pack) => reach(pack, packs, ALWAYS, [pack.pack]))
    const layers = byNearness([...reached, ...below(reached, packs)])
    places.set(place, { layers, standings: standingsOf(layers) })
  }
  return { packs, places }
}
