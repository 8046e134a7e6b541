import type { RuleBook } from './book.ts'
import type { Citation } from './citation.ts'

/** One line of docs/sources.md: a pack's parameter, one of its sources, and whether anybody read it. */
export type SourceLine = {
  readonly pack: string
  readonly parameter: string
  readonly citation: Citation
  readonly invented: boolean
}

/** Every source of every pack, once, in the order of packs and parameters; contradictions' sources included. */
export function sourceLines(book: RuleBook): readonly SourceLine[] {
  const packs = [...book.packs.values()].sort((a, b) => (a.pack < b.pack ? -1 : 1))
  const lines = packs.flatMap(({ pack, invented, parameters }) =>
    parameters.flatMap(({ name, entries }) =>
      entries
        .flatMap((entry) => [...entry.citations, ...entry.contradictions.flatMap((it) => it.citations)])
        .map((citation): SourceLine => ({ pack, parameter: name, citation, invented })),
    ),
  )
  return [...new Map(lines.map((line) => [markdownRow(line), line])).values()]
}

const cell = (text: string): string => text.replaceAll('|', '\\|')

export function markdownRow({ pack, parameter, citation: it, invented }: SourceLine): string {
  const source = [it.authority, it.document, it.edition, it.section]
    .filter((part) => part !== null)
    .join(', ')
  const covers = it.covers === null ? '' : ` (for ${it.covers})`
  const status = invented ? 'invented' : it.verified
  return `| ${pack} | ${parameter} | ${status} | ${cell(source + covers)} | ${cell(it.readAt ?? '')} |`
}

/** The whole table of docs/sources.md. */
export const sourcesMarkdown = (book: RuleBook): string =>
  [
    '| pack | parameter | status | source | read at |',
    '| --- | --- | --- | --- | --- |',
    ...sourceLines(book).map(markdownRow),
  ].join('\n')
