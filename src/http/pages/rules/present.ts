import type { Layer, RuleBook } from '../../../rules/book.ts'
import { type Citation, VERIFIED, type Verified, weakest } from '../../../rules/citation.ts'
import type { Entry, JurisdictionKind, Pack } from '../../../rules/pack.ts'
import { PARAMETERS, type ParameterName } from '../../../rules/parameters.ts'
import type { Span } from '../../../rules/span.ts'
import { dayInWords } from '../words/dates.ts'

export type PackLine = {
  readonly pack: string
  readonly title: string
  readonly whose: string
  readonly invented: boolean
  /** When this county used it. */
  readonly during: readonly string[]
  /** How many citations there are of each kind; those it has none of left out. */
  readonly cited: readonly { readonly verified: Verified; readonly count: number }[]
}

const KIND_WORDS: { readonly [K in JurisdictionKind]: string } = {
  county: 'county',
  state: 'state',
  'model-code': 'model code',
  federal: 'federal',
  lender: 'lender',
  practice: 'common practice',
}

/** Every rule pack a county uses, nearest first: a nearer one overrides those after it. */
export function presentLayers(book: RuleBook, place: string): readonly PackLine[] {
  const layers = book.places.get(place)?.layers ?? []
  const packs = [...new Map(layers.map(({ pack }) => [pack.pack, pack])).values()]
  return packs.map((pack) => ({
    pack: pack.pack,
    title: pack.title,
    whose: `${pack.jurisdiction.name} (${KIND_WORDS[pack.jurisdiction.kind]})`,
    invented: pack.invented,
    during: spans(layers.filter((layer) => layer.pack.pack === pack.pack)),
    cited: counts(pack.parameters.flatMap(({ entries }) => entries.flatMap(citationsOf))),
  }))
}

/** Spans that follow each other without a gap are one. */
function spans(layers: readonly Layer[]): readonly string[] {
  const joined: Span[] = []
  for (const { during } of [...layers].sort((a, b) =>
    (a.during.from ?? '').localeCompare(b.during.from ?? ''),
  )) {
    const last = joined.at(-1)
    if (!last || (last.until !== null && (during.from === null || during.from > last.until)))
      joined.push(during)
    else if (last.until !== null && (during.until === null || during.until > last.until))
      joined[joined.length - 1] = { from: last.from, until: during.until }
  }
  return joined.map(spanInWords)
}

export function spanInWords({ from, until }: Span): string {
  if (from === null) return until === null ? 'always' : `until ${dayInWords(until)}`
  return until === null ? `from ${dayInWords(from)}` : `${dayInWords(from)} to ${dayInWords(until)}`
}

/** Gathered values carry citations item by item; all others have one list. */
function citationsOf({ value, citations }: Entry<unknown>): readonly Citation[] {
  const items = Array.isArray(value) ? (value as readonly { readonly citations?: readonly Citation[] }[]) : []
  const own = items.flatMap((item) => item.citations ?? [])
  return own.length > 0 ? own : citations
}

const counts = (citations: readonly Citation[]): PackLine['cited'] =>
  VERIFIED.map((verified) => ({
    verified,
    count: citations.filter((it) => it.verified === verified).length,
  })).filter(({ count }) => count > 0)

export type EntryShown = {
  readonly during: string
  readonly value: unknown
  readonly note: string | null
  readonly citations: readonly Citation[]
  /** The weakest of its citations: how the value is marked. */
  readonly verified: Verified
  readonly contradictions: Entry<unknown>['contradictions']
}

export type ParameterShown = {
  readonly name: string
  readonly meaning: string
  readonly governedBy: string
  readonly entries: readonly EntryShown[]
}

const GOVERNED: Readonly<Record<string, string>> = {
  'permit-issued': 'the rule on the day the permit was issued applies',
  installed: 'the rule on the day of installation applies',
  inspected: 'the rule on the day of the inspection applies',
}

export const presentPack = (pack: Pack): readonly ParameterShown[] =>
  pack.parameters.map(({ name, governedBy, entries }) => ({
    name: name.replaceAll(/[.-]/g, ' '),
    meaning: PARAMETERS[name as ParameterName].meaning,
    governedBy: GOVERNED[governedBy] ?? governedBy,
    entries: entries.map((entry) => ({
      during: spanInWords(entry),
      value: entry.value,
      note: entry.note,
      citations: citationsOf(entry) === entry.citations ? entry.citations : [],
      verified: weakest(citationsOf(entry)),
      contradictions: entry.contradictions,
    })),
  }))
