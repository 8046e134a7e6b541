import { LEAST, type Pattern, type PatternRow } from '../../../operations/patterns/find-patterns.ts'
import type { DiscrepancyKind } from '../../../reconcile/kinds.ts'
import { SHORTFALLS, UNRECORDED } from '../../../store/patterns.ts'
import { formsPath } from '../forms/addresses.ts'
import { queuePath, searchPath } from '../layout/addresses.ts'
import { capital, counted, headed } from '../words/plain.ts'
import { howOften, probabilityInFigures, type Reading, readingOf } from './chance.ts'

type Link = { readonly to: string; readonly words: string }

export type GroupLine = {
  readonly name: string
  /** Where the group itself can be looked at; null where nothing lists it. */
  readonly to: string | null
  /** `6 of 13` */
  readonly here: string
  readonly elsewhere: string
  readonly probability: string
  /** How often chance alone puts some group this far apart, when all are compared; and what that says. */
  readonly often: string
  readonly reading: Reading
}

export type PatternTable = {
  readonly title: string
  readonly asks: string
  readonly counts: string
  readonly group: string
  readonly rows: readonly GroupLine[]
  /** What was left out for being too small; null where nothing was. */
  readonly leftOut: string | null
  /** Where what is counted can be looked at. */
  readonly links: readonly Link[]
}

export type PatternsPage = {
  /** None: nothing has been counted in the county yet. */
  readonly tables: readonly PatternTable[]
  /** Said once of all of them. */
  readonly cautions: readonly string[]
}

type Words = {
  readonly title: string
  readonly group: string
  /** One of what is too small to be shown, and several. */
  readonly one: string
  readonly many: string
  /** What a group is a group of. */
  readonly of: string
  readonly named: (group: string) => string
  readonly to: (county: string, group: string) => string | null
  readonly links: (county: string) => readonly Link[]
}

const inQueue =
  (kinds: readonly DiscrepancyKind[]) =>
  (county: string): readonly Link[] =>
    kinds.map((kind) => ({ to: `${queuePath(county)}?kind=${kind}`, words: `${headed(kind)} in the queue` }))

const WORDS: { readonly [N in Pattern['name']]: Words } = {
  'shortfalls-by-decade': {
    title: 'Shortfalls by decade',
    group: 'Decade',
    one: 'decade',
    many: 'decades',
    of: 'inspected parcels',
    named: (decade) => decade,
    to: () => null,
    links: inQueue(SHORTFALLS),
  },
  'unrecorded-work-by-street': {
    title: 'Unrecorded work by street',
    group: 'Street',
    one: 'street',
    many: 'streets',
    of: 'inspected parcels',
    named: (street) => street.split(' ').map(capital).join(' '),
    to: searchPath,
    links: inQueue(UNRECORDED),
  },
  'misreads-by-form': {
    title: 'Misread values by form',
    group: 'Form',
    one: 'form',
    many: 'forms',
    of: 'confirmed values',
    named: capital,
    to: () => null,
    links: (county) => [{ to: `${formsPath(county)}?state=in-force`, words: 'Form layouts in use' }],
  },
}

export function presentPatterns(county: string, patterns: readonly Pattern[]): PatternsPage {
  const anything = patterns.some(({ rows, tooFew }) => rows.length + tooFew > 0)
  return {
    tables: anything ? patterns.map((it) => tableOf(county, it)) : [],
    cautions: [...new Set(patterns.flatMap(({ cautions }) => cautions))],
  }
}

function tableOf(county: string, { name, asks, counts, rows, tooFew }: Pattern): PatternTable {
  const words = WORDS[name]
  const few = tooFew === 1 ? 'is' : 'are'
  return {
    title: words.title,
    asks,
    counts,
    group: words.group,
    rows: rows.map((row) => lineOf(county, row, words)),
    leftOut:
      tooFew === 0
        ? null
        : [
            `${capital(counted(tooFew, words.one, words.many))} with fewer than ${LEAST} ${words.of},`,
            `or without a name, ${few} not shown. ${tooFew === 1 ? 'It is' : 'They are'} counted with the others.`,
          ].join(' '),
    links: words.links(county),
  }
}

function lineOf(county: string, row: PatternRow, { named, to }: Words): GroupLine {
  return {
    name: named(row.group),
    to: to(county, row.group),
    here: share(row.hits, row.total),
    elsewhere: share(row.elsewhereHits, row.elsewhereTotal),
    probability: probabilityInFigures(row.probability),
    often: howOften(row.adjusted),
    reading: readingOf(row),
  }
}

const share = (hits: number, total: number): string =>
  `${hits.toLocaleString('en-US')} of ${total.toLocaleString('en-US')}`
