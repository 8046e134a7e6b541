import { sentence } from '../../reconcile/meaning/meaning.ts'
import type { Exhibit, Outcome, Settle } from '../../reconcile/outcome.ts'
import type { Source } from '../../records/source.ts'
import { type Citation, citeInWords, type Verified } from '../../rules/citation.ts'

/** One question with its answer and all that the answer rests on, as a report prints it. */
export type EvidencePrinted = {
  readonly about: string
  readonly question: string
  readonly verdict: string
  readonly because: string
  /** Null where it says no more than the answer. */
  readonly certainty: string | null
  readonly exhibits: readonly ExhibitPrinted[]
  readonly steps: readonly StepPrinted[]
  readonly citations: readonly CitationPrinted[]
  readonly wouldSettle: string | null
}

type ExhibitPrinted = {
  readonly what: string
  readonly word: Exhibit['word']
  readonly asStated: string
  /** Null where it was used as it was stated. */
  readonly asUsed: string | null
  readonly source: string
}
type StepPrinted = Outcome['steps'][number]
type CitationPrinted = { readonly place: string; readonly words: string | null; readonly verified: string }

export function printEvidence(outcome: Outcome): EvidencePrinted {
  const { subject, facet, question, verdict, because, certainty, exhibits, steps, citations, wouldSettle } =
    outcome
  return {
    about: facet === null || facet === because ? subject.label : `${subject.label}, ${facet}`,
    question,
    verdict: verdict.replaceAll('-', ' '),
    because: sentence(because),
    certainty: certainty.because === because ? null : `${certainty.word}: ${certainty.because}`,
    exhibits: exhibits.map(({ what, word, asStated, asUsed, from }) => ({
      what,
      word,
      asStated,
      asUsed: asUsed === asStated ? null : asUsed,
      source: sourceInWords(from),
    })),
    steps: steps.map(({ says, formula, numbers, result }) => ({ says, formula, numbers, result })),
    citations: unique(citations).map(printCitation),
    wouldSettle: wouldSettle && settleInWords(wouldSettle),
  }
}

const VERIFIED_IN_WORDS: { readonly [V in Verified]: string } = {
  read: 'the source itself was read',
  'second-hand': 'second-hand: read as another page repeats it',
  'from-memory': 'from memory: nobody has read the source yet',
  'common-practice': 'no source',
}

export const printCitation = (it: Citation): CitationPrinted => ({
  place:
    it.verified === 'common-practice'
      ? `common practice${it.covers === null ? '' : `, for ${it.covers}`}`
      : citeInWords({ ...it, verified: 'read' }),
  words: it.words,
  verified: VERIFIED_IN_WORDS[it.verified],
})

const unique = (all: readonly Citation[]): readonly Citation[] => [
  ...new Map(all.map((it) => [JSON.stringify(it), it])).values(),
]

const settleInWords = ({ what, why }: Settle): string => sentence(`to settle it: ${what} (${why})`)

/** Where a piece of evidence comes from, down to the page or to how it was measured; no account and no file name. */
export function sourceInWords(from: Exhibit['from']): string {
  switch (from.kind) {
    case 'permit':
      return `permit ${from.origin.permit.number}, ${readingInWords(from.origin.source)}`
    case 'inspection':
      return `inspection${from.component === null ? '' : `, ${from.component}`}: ${from.how}`
    case 'rule':
      return from.says
    case 'computed':
      return 'computed, steps below'
  }
}

export function readingInWords(source: Source): string {
  switch (source.kind) {
    case 'typed':
      return `typed ${source.on.slice(0, 10)}`
    case 'document': {
      const sure = source.confidence === null ? '' : `, read with confidence ${source.confidence.toFixed(2)}`
      return `page ${source.page}: “${source.words}”${sure}, confirmed by a person`
    }
    case 'imported':
      return `imported, line ${source.line}`
    case 'correction':
      return 'corrected by a reviewer'
  }
}

/** Rests on no more than a look or two: a row of a table tells it whole. */
export const isShort = ({ steps, citations, exhibits }: EvidencePrinted): boolean =>
  steps.length === 0 && citations.length === 0 && exhibits.length <= 2
