import type { PlainDate } from '../../base/plain-date.ts'
import { recordedLines } from '../../brief/recorded.ts'
import type { SitePlan } from '../../brief/site-plan/plan.ts'
import { SEVERITIES, type Severity } from '../../reconcile/kinds.ts'
import type { Outcome } from '../../reconcile/outcome.ts'
import type { Discrepancy, Reconciliation } from '../../reconcile/reconcile.ts'
import type { DecisionAction } from '../../records/decision.ts'
import type { ReviewerText } from '../../records/whose.ts'
import { ACTOR_NOUNS, actorOf, actWords } from '../../words/acts.ts'
import { adviceWords } from '../../words/advice.ts'
import { type LetterText, letterText } from '../../words/agent/letter.ts'
import { CAUTIONS, type Caution, DEFERENCE } from '../../words/cautions.ts'
import { DECISION_WORDS } from '../../words/decisions.ts'
import { discrepancyWords } from '../../words/follow-up.ts'
import { doubtOf, doubtWords } from '../../words/gaps.ts'
import { capital, counted, listed, sentence } from '../../words/sentence.ts'
import { SEVERITY_WORDS, titleOf } from '../../words/titles.ts'
import { printDay } from './day.ts'
import { type EvidencePrinted, isShort, printEvidence } from './evidence.ts'
import type { LetterFrame } from './frame.ts'
import { type PhotoInReport, type PhotosPrinted, printPhotos } from './photos.ts'
import { permitInWords, printRecord, type RecordPrinted } from './record.ts'
import { type PlanPrinted, printPlan } from './site-plan.ts'

/** What a reviewer did about one of the differences, where its ground has not moved since. */
export type DecisionInReport = {
  readonly key: string
  readonly action: DecisionAction
  readonly reason: ReviewerText
  readonly on: string
}

export type ReportFacts = {
  readonly audience: 'firm' | 'reviewer'
  readonly reconciliation: Reconciliation
  readonly plan: SitePlan | null
  readonly decisions: readonly DecisionInReport[]
  /** Those of the inspection that are printed, and how many it has. */
  readonly photos: { readonly shown: readonly PhotoInReport[]; readonly all: number }
  /** Name of the firm that made the inspection; null where there was none. */
  readonly firm: string | null
  /** What it was computed from and by, so that it can be computed again. */
  readonly fingerprints: readonly { readonly what: string; readonly value: string }[]
}

export type Report = {
  readonly frame: LetterFrame
  readonly copy: LetterText
  readonly basis: readonly (readonly [name: string, value: string])[]
  readonly counts: string
  readonly differences: readonly DifferencePrinted[]
  readonly plan: PlanPrinted | null
  readonly photos: PhotosPrinted | null
  readonly agrees: Answers
  readonly untold: Answers
  readonly beside: readonly { readonly about: string; readonly question: string; readonly because: string }[]
  readonly record: readonly RecordPrinted[]
  readonly contradictions: readonly string[]
  readonly advice: readonly { readonly about: string; readonly says: string }[]
  readonly cautions: readonly Caution[]
  readonly deference: string
  readonly fingerprints: ReportFacts['fingerprints']
}

/** Those that need room for their working, and those that a row tells whole. */
type Answers = { readonly long: readonly EvidencePrinted[]; readonly short: readonly EvidencePrinted[] }

type DifferencePrinted = {
  readonly kind: string
  readonly severity: Severity
  readonly severityInWords: string
  readonly says: string
  readonly who: string
  readonly what: string
  readonly decided: string | null
  readonly evidence: EvidencePrinted
}

const COUNTED: { readonly [S in Severity]: string } = { action: 'action', review: 'review', note: 'note' }

const WELL = ['agrees', 'suffices']
const UNTOLD = ['cannot-tell', 'too-close-to-call']

/** Everything that a reconciliation came to, with its evidence, for those who have to redo it by hand. */
export function report(frame: LetterFrame, facts: ReportFacts): Report {
  const { reconciliation, audience, decisions } = facts
  const { outcomes, discrepancies, asBuilt, advice } = reconciliation
  const others = outcomes.filter(({ raises }) => raises === null)
  return {
    frame,
    copy: letterText(frame.language),
    basis: basisOf(reconciliation, facts.firm),
    counts: countsOf(discrepancies),
    differences: discrepancies.map((it) => printDifference(it, audience, decisions)),
    plan: printPlan(facts.plan),
    photos: printPhotos(facts.photos.shown, facts.photos.all),
    agrees: answers(others.filter(({ verdict }) => WELL.includes(verdict))),
    untold: answers(others.filter(({ verdict }) => UNTOLD.includes(verdict))),
    beside: others
      .filter(({ verdict }) => verdict === 'does-not-apply')
      .map(printEvidence)
      .map(({ about, question, because }) => ({ about, question, because })),
    record: printRecord(recordedLines(asBuilt), asBuilt.components),
    contradictions: asBuilt.contradictions.map(doubtOf).map(doubtWords).map(sentence),
    advice: advice.map((it) => ({ about: it.about.label, says: adviceWords(it) })),
    cautions: CAUTIONS,
    deference: DEFERENCE,
    fingerprints: facts.fingerprints,
  }
}

function answers(outcomes: readonly Outcome[]): Answers {
  const printed = outcomes.map(printEvidence)
  return { long: printed.filter((it) => !isShort(it)), short: printed.filter(isShort) }
}

function basisOf({ asBuilt, findings }: Reconciliation, firm: string | null): Report['basis'] {
  return [
    [
      'File',
      asBuilt.permits.length > 0 ? asBuilt.permits.map(permitInWords).join('; ') : 'no approved permit',
    ],
    ...(asBuilt.unapproved.length > 0
      ? ([['Not approved', asBuilt.unapproved.map(permitInWords).join('; ')]] as const)
      : []),
    [
      'Inspection',
      findings === null ? 'none submitted' : `${printDay(asBuilt.on)}${firm === null ? '' : `, ${firm}`}`,
    ],
  ]
}

function countsOf(discrepancies: readonly Discrepancy[]): string {
  if (discrepancies.length === 0) return 'Nothing differs.'
  const counts = SEVERITIES.map((severity) => discrepancies.filter((it) => it.severity === severity).length)
  return sentence(listed(SEVERITIES.map((severity, at) => counted(counts[at]!, COUNTED[severity]))))
}

function printDifference(
  it: Discrepancy,
  audience: ReportFacts['audience'],
  decisions: readonly DecisionInReport[],
): DifferencePrinted {
  const { key, kind, severity, outcome } = it
  const decision = decisions.find((made) => made.key === key)
  return {
    kind: titleOf(kind, outcome.subject, outcome.reason),
    severity,
    severityInWords: `${SEVERITY_WORDS[severity].word}: ${SEVERITY_WORDS[severity].means}`,
    says: discrepancyWords(it, audience),
    who: capital(ACTOR_NOUNS[actorOf(it)]),
    what: sentence(actWords(it, outcome.subject)),
    decided: decision
      ? `Decided ${printDay(decision.on as PlainDate)}: ${DECISION_WORDS[decision.action].done}. Reason: ${sentence(decision.reason)}`
      : null,
    evidence: printEvidence(outcome),
  }
}
