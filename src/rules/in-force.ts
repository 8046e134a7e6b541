import type { NonEmpty } from '../base/non-empty.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { RuleBook, Standing } from './book.ts'
import { type Citation, type Verified, weakest } from './citation.ts'
import type { Entry, PackId, PlaceId } from './pack.ts'
import { PARAMETERS, type ParameterName, type ValueOf } from './parameters.ts'
import { holdsOn } from './span.ts'

/** A layer that also had an answer on that day and gave way to a nearer one. */
export type Overridden<Name extends ParameterName> = {
  readonly pack: PackId
  readonly kind: Standing['kind']
  readonly value: ValueOf<Name>
  readonly citations: NonEmpty<Citation>
}

/** The four answers there are. A caller has to look at `state` before it can touch a value. */
export type InForce<Name extends ParameterName> =
  | {
      readonly state: 'in-force'
      readonly value: ValueOf<Name>
      readonly entry: Entry<ValueOf<Name>>
      readonly pack: PackId
      readonly kind: Standing['kind']
      readonly governedBy: Standing['governedBy']
      readonly citations: NonEmpty<Citation>
      /** The least sure of the citations: what the value has to be shown as. */
      readonly verified: Verified
      /** The pack was made up for demonstration. */
      readonly invented: boolean
      readonly overridden: readonly Overridden<Name>[]
    }
  /** Nothing held yet on that day; the first that did began on `from`. */
  | { readonly state: 'not-yet'; readonly from: PlainDate; readonly pack: PackId }
  /** What held ended on `until`, the first day without it; `resumes` where something later follows. */
  | {
      readonly state: 'ended'
      readonly until: PlainDate
      readonly last: Entry<ValueOf<Name>>
      readonly pack: PackId
      readonly resumes: PlainDate | null
    }
  /** No layer of the place ever spoke of it, or there are no packs for such a place. */
  | { readonly state: 'no-record'; readonly why: 'parameter-absent' | 'place-unknown' }

type Item = { readonly id: string; readonly citations: NonEmpty<Citation> }

/** Side by side, nearest first; an id that a nearer layer has taken is dropped further out. */
function gather<Name extends ParameterName>(holding: NonEmpty<Standing<Name>>): NonEmpty<Item> {
  const items = new Map<string, Item>()
  for (const { entry } of holding)
    for (const item of entry.value as readonly Item[]) if (!items.has(item.id)) items.set(item.id, item)
  return [...items.values()] as unknown as NonEmpty<Item>
}

function outOfForce<Name extends ParameterName>(
  standings: NonEmpty<Standing<Name>>,
  date: PlainDate,
): InForce<Name> {
  let last: Standing<Name> | null = null
  let next: Standing<Name> | null = null
  for (const it of standings) {
    const { from, until } = it.during
    if (until !== null && until <= date && (last === null || until > last.during.until!)) last = it
    if (from !== null && from > date && (next === null || from < next.during.from!)) next = it
  }
  const resumes = next?.during.from ?? null
  if (last) return { state: 'ended', until: last.during.until!, last: last.entry, pack: last.pack, resumes }
  return { state: 'not-yet', from: resumes!, pack: next!.pack }
}

/** What a place (a county, or a state asked for its own sake) goes by for one parameter on one day. Total. */
export function inForce<Name extends ParameterName>(
  book: RuleBook,
  place: PlaceId,
  name: Name,
  date: PlainDate,
): InForce<Name> {
  const rules = book.places.get(place)
  if (!rules) return { state: 'no-record', why: 'place-unknown' }
  const standings = rules.standings.get(name) as NonEmpty<Standing<Name>> | undefined
  if (!standings) return { state: 'no-record', why: 'parameter-absent' }

  const [winner, ...rest] = standings.filter((it) => holdsOn(it.during, date))
  if (!winner) return outOfForce(standings, date)

  const { pack, kind, governedBy, invented } = winner
  const by = { state: 'in-force', pack, kind, governedBy, invented } as const
  if (PARAMETERS[name].layering === 'gathered') {
    const items = gather<Name>([winner, ...rest])
    const value = items as unknown as ValueOf<Name>
    const citations = items.flatMap((item) => [...item.citations]) as unknown as NonEmpty<Citation>
    const entry = { ...winner.entry, value, citations }
    return { ...by, value, entry, citations, verified: weakest(citations), overridden: [] }
  }
  const { entry } = winner
  const { value, citations } = entry
  return { ...by, value, entry, citations, verified: weakest(citations), overridden: givingWay(pack, rest) }
}

/** One answer a pack: a pack that several roads lead to is named once, and the winner not again. */
function givingWay<Name extends ParameterName>(
  winner: PackId,
  rest: readonly Standing<Name>[],
): readonly Overridden<Name>[] {
  const apart = new Map(rest.map((it) => [it.pack, it]))
  apart.delete(winner)
  return [...apart.values()].map(({ pack, kind, entry: { value, citations } }) => ({
    pack,
    kind,
    value,
    citations,
  }))
}
