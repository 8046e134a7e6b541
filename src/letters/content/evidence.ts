import type { Step } from '../../measure/step.ts'
import type { Exhibit, Outcome, RuleCited } from '../../reconcile/outcome.ts'
import type { Source } from '../../records/source.ts'
import { citeInWords } from '../../rules/citation.ts'
import { remeasureWords, settleWhy } from '../../words/acts.ts'
import { certaintyWords } from '../../words/certainty.ts'
import { isKeptFrom } from '../../words/kept-from.ts'
import { questionWords } from '../../words/questions.ts'
import { reasonWords } from '../../words/reasons.ts'
import { RULE_NOUNS, VERIFIED_WORDS } from '../../words/rules.ts'
import { sentence } from '../../words/sentence.ts'
import { howTaken, shown, THING_NOUNS } from '../../words/things.ts'
import { VERDICT_WORDS } from '../../words/titles.ts'

/** One question with its answer and all that the answer rests on, as a report prints it. */
export type EvidencePrinted = {
  readonly about: string
  readonly question: string
  readonly verdict: string
  readonly because: string
  /** Null where nothing was decided. */
  readonly certainty: string | null
  readonly exhibits: readonly ExhibitPrinted[]
  readonly steps: readonly Step[]
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
type CitationPrinted = { readonly place: string; readonly words: string | null; readonly verified: string }

/** Facets that tell a reader something; the others only tell keys apart. */
const TELLING: readonly (string | null)[] = ['when permitted', 'today', 'cover', 'age']

export const aboutOutcome = ({ subject, facet }: Pick<Outcome, 'subject' | 'facet'>): string =>
  TELLING.includes(facet) ? `${subject.label}, ${facet}` : subject.label

export function printEvidence(outcome: Outcome): EvidencePrinted {
  const { check, facet, verdict, certainty, exhibits, steps, citations, wouldSettle } = outcome
  return {
    about: aboutOutcome(outcome),
    question: questionWords(check, isKeptFrom(facet) ? facet : null),
    verdict: VERDICT_WORDS[verdict].word,
    because: sentence(reasonWords(outcome)),
    certainty: certaintyWords(certainty),
    exhibits: exhibits.map(printExhibit),
    steps: steps.map(({ says, formula, numbers, result }) => ({ says, formula, numbers, result })),
    citations: unique(citations).map(printCitation),
    wouldSettle:
      wouldSettle &&
      sentence(`to settle it: ${remeasureWords(wouldSettle.measurement)} (${settleWhy(wouldSettle)})`),
  }
}

function printExhibit({ thing, part, word, asStated, used, from }: Exhibit): ExhibitPrinted {
  const asUsed = shown(used)
  return {
    what: part && part.kind !== 'system' ? `${THING_NOUNS[thing]} of ${part.label}` : THING_NOUNS[thing],
    word,
    asStated: asStated ?? asUsed,
    asUsed: asStated === null || asUsed === asStated ? null : asUsed,
    source: sourceInWords(from),
  }
}

export const printCitation = (it: RuleCited): CitationPrinted => ({
  place:
    it.verified === 'common-practice'
      ? `common practice, for ${it.covers ?? (it.rule === null ? 'this' : RULE_NOUNS[it.rule])}`
      : citeInWords({ ...it, verified: 'read' }),
  words: it.words,
  verified: VERIFIED_WORDS[it.verified],
})

const unique = (all: readonly RuleCited[]): readonly RuleCited[] => [
  ...new Map(all.map((it) => [JSON.stringify(it), it])).values(),
]

/** Where a piece of evidence comes from, down to the page or to how it was measured; no account and no file name. */
export function sourceInWords(from: Exhibit['from']): string {
  switch (from.kind) {
    case 'permit':
      return `permit ${from.origin.permit.number}, ${readingInWords(from.origin.source)}`
    case 'inspection':
      return `inspection${from.component === null ? '' : `, ${from.component}`}: ${howTaken(from.how)}`
    case 'rule':
      return from.citations.map(citeInWords).join('; ')
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
