import { z } from 'zod'
import { ACTORS, ACTS } from '../../../reconcile/acts.ts'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../../reconcile/kinds.ts'
import { type Exhibit, type Outcome, type RuleCited, VERDICTS } from '../../../reconcile/outcome.ts'
import type { Discrepancy, Reconciliation } from '../../../reconcile/reconcile.ts'
import { itemOf } from '../../../reconcile/status.ts'
import type { Part } from '../../../records/part.ts'
import { actorOf, actWords, remeasureWords, settleWhy } from '../../../words/acts.ts'
import { adviceWords } from '../../../words/advice.ts'
import { itemWords } from '../../../words/agent/status.ts'
import { basisWords } from '../../../words/certainty.ts'
import { discrepancyWords } from '../../../words/follow-up.ts'
import { isKeptFrom } from '../../../words/kept-from.ts'
import { questionWords } from '../../../words/questions.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { citationWords } from '../../../words/rules.ts'
import { sentence } from '../../../words/sentence.ts'
import { howTaken, shown, THING_NOUNS } from '../../../words/things.ts'
import { titleOf } from '../../../words/titles.ts'
import { asBuilt, presentAsBuilt, presentOrigin } from './as-built.ts'
import { citation, day, step } from './basics.ts'
import { origin } from './source.ts'

export const part = z
  .object({
    key: z.string(),
    label: z.string().meta({ description: 'As the permit names it, or the firm where it is not on record' }),
    kind: z.string(),
    onRecord: z.boolean(),
  })
  .meta({ id: 'Part', description: 'What something is about: a component, or `system` for the whole' })

export const presentPart = ({ key, label, kind, onRecord }: Part): z.output<typeof part> => ({
  key,
  label,
  kind,
  onRecord,
})

const citationAt = z.number().meta({ description: 'Place in `citations`, from 0' })
const exhibitAt = z.number().meta({ description: 'Place in `exhibits`, from 0' })

const exhibit = z
  .object({
    thing: z.string().meta({ description: 'What it is, by name' }),
    what: z.string().meta({ description: 'The same in words' }),
    part: z.string().nullable().meta({ description: 'The key of the part; null for the whole' }),
    word: z.enum(['stated', 'found', 'required', 'derived']),
    asStated: z.string().nullable().meta({ description: 'As the permit or the firm wrote it' }),
    asUsed: z.string(),
    from: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('permit'), origin }),
      z.object({
        kind: z.literal('inspection'),
        findings: z.string(),
        component: z.string().nullable(),
        how: z.string(),
      }),
      z.object({ kind: z.literal('computed') }),
      z.object({ kind: z.literal('rule'), citations: z.array(citationAt) }),
    ]),
  })
  .meta({ id: 'Exhibit', description: 'A piece of evidence: as stated, as used, and where it came from' })

const ruleCited = citation.extend({
  rule: z.string().nullable().meta({ description: 'The rule of the pack that it stands for' }),
  says: z.string().meta({ description: 'The citation as one line, with whether the source was verified' }),
})

/** Evidence, each piece once; outcomes point at its places. */
const tables = {
  citations: z.array(ruleCited),
  exhibits: z.array(exhibit),
}

const outcome = z
  .object({
    check: z.string().meta({ description: 'The check that asked; docs/discrepancies.md lists them' }),
    question: z.string(),
    subject: part,
    facet: z.string().nullable().meta({ description: 'Which of several such questions: the day or rule' }),
    verdict: z.enum(VERDICTS),
    raises: z.enum(DISCREPANCY_KINDS).nullable(),
    reason: z.looseObject({ is: z.string() }).meta({
      description: 'Why, as data: quantities with unit and expanded uncertainty U (k = 2), parts, rules',
    }),
    because: z.string().meta({ description: 'The same as one sentence' }),
    certainty: z.object({ word: z.enum(['firm', 'likely', 'open']), because: z.string() }),
    exhibits: z.array(exhibitAt),
    steps: z.array(step),
    citations: z.array(citationAt),
    wouldSettle: z
      .object({
        what: z.string(),
        why: z.string(),
        expandedUncertaintyAfter: z.number(),
        unit: z.string(),
        settles: z.boolean(),
      })
      .nullable()
      .meta({ description: 'The one measurement that would settle it best, from the uncertainty budget' }),
  })
  .meta({ id: 'Outcome', description: 'How one question about one thing ended' })

/** What a discrepancy is, wherever one is told. */
export const discrepancyBody = {
  key: z.string().meta({ description: 'Stable from one reconciliation to the next' }),
  kind: z.enum(DISCREPANCY_KINDS),
  title: z.string().meta({ examples: ['Outlet baffle missing'] }),
  severity: z.enum(SEVERITIES).meta({
    description: 'About consequence: action before transfer or further use, review by a person, or a note',
  }),
  sentences: z
    .object({ firm: z.string(), reviewer: z.string(), agent: z.string() })
    .meta({ description: 'What it means, to each of the three audiences' }),
  next: z
    .object({ who: z.enum(ACTORS), act: z.enum(ACTS), what: z.string() })
    .meta({ description: 'Who acts next, and how' }),
}

const discrepancyRaised = z
  .object({
    ...discrepancyBody,
    outcome: z.number().meta({ description: 'Place in `outcomes`, from 0' }),
  })
  .meta({ id: 'DiscrepancyRaised', description: 'A difference, what it rests on and what it leads to' })

export const reconciliationResult = z
  .object({
    asOf: day,
    findings: z.string().nullable(),
    asBuilt,
    outcomes: z.array(outcome).meta({ description: 'Every check and its result' }),
    discrepancies: z.array(discrepancyRaised).meta({ description: 'Most serious first' }),
    advice: z.array(z.object({ about: part, advice: z.string(), says: z.string() })),
    ...tables,
  })
  .meta({
    id: 'ReconciliationResult',
    description:
      'As-built against as-found, under the rules in force. Each citation and each exhibit stands once, in a table; the rest points at its place.',
  })

/** Collects what is pointed at, each once, in the order in which it is first needed. */
class Table<T> {
  readonly rows: T[] = []
  readonly #places = new Map<string, number>()

  at(row: T): number {
    const text = JSON.stringify(row)
    const known = this.#places.get(text)
    if (known !== undefined) return known
    this.rows.push(row)
    this.#places.set(text, this.rows.length - 1)
    return this.rows.length - 1
  }
}

class Evidence {
  readonly citations = new Table<z.output<typeof ruleCited>>()
  readonly exhibits = new Table<z.output<typeof exhibit>>()

  citation = (it: RuleCited): number => this.citations.at({ ...it, says: citationWords(it) })

  exhibit = ({ thing, part: of, word, asStated, used, from }: Exhibit): number =>
    this.exhibits.at({
      thing,
      what: of && of.kind !== 'system' ? `${THING_NOUNS[thing]} of ${of.label}` : THING_NOUNS[thing],
      part: of && of.kind !== 'system' ? of.key : null,
      word,
      asStated,
      asUsed: shown(used),
      from: this.#from(from),
    })

  #from(from: Exhibit['from']): z.output<typeof exhibit>['from'] {
    switch (from.kind) {
      case 'permit':
        return { kind: 'permit', origin: presentOrigin(from.origin) }
      case 'inspection':
        return { ...from, how: howTaken(from.how) }
      case 'rule':
        return { kind: 'rule', citations: from.citations.map((it) => this.citation({ ...it, rule: null })) }
      case 'computed':
        return { kind: 'computed' }
    }
  }

  get tables() {
    return { citations: this.citations.rows, exhibits: this.exhibits.rows }
  }
}

/** One outcome by itself, with its evidence beside it. */
export const outcomeShape = outcome.extend({ evidence: z.object(tables) })
export function presentOutcome(it: Outcome): z.output<typeof outcomeShape> {
  const evidence = new Evidence()
  return { ...outcomeIn(it, evidence), evidence: evidence.tables }
}

const outcomeIn = (it: Outcome, evidence: Evidence): z.output<typeof outcome> => ({
  check: it.check,
  question: questionWords(it.check, isKeptFrom(it.facet) ? it.facet : null),
  subject: presentPart(it.subject),
  facet: it.facet,
  verdict: it.verdict,
  raises: it.raises,
  reason: it.reason,
  because: sentence(reasonWords(it)),
  certainty: { word: it.certainty.word, because: basisWords(it.certainty.basis) },
  exhibits: it.exhibits.map(evidence.exhibit),
  steps: it.steps.map(({ says, formula, numbers, result }) => ({ says, formula, numbers, result })),
  citations: it.citations.map(evidence.citation),
  wouldSettle: it.wouldSettle && {
    what: remeasureWords(it.wouldSettle.measurement),
    why: settleWhy(it.wouldSettle),
    expandedUncertaintyAfter: it.wouldSettle.after.value,
    unit: it.wouldSettle.after.unit,
    settles: it.wouldSettle.settles,
  },
})

export const presentBody = (it: Discrepancy) => ({
  key: it.key,
  kind: it.kind,
  title: titleOf(it.kind, it.outcome.subject, it.outcome.reason),
  severity: it.severity,
  sentences: {
    firm: discrepancyWords(it, 'firm'),
    reviewer: discrepancyWords(it, 'reviewer'),
    agent: itemWords(itemOf({ discrepancy: it, decided: null }), 'en').says as string,
  },
  next: { who: actorOf(it), act: it.act, what: actWords(it, it.outcome.subject) },
})

export function presentResult(result: Reconciliation): z.output<typeof reconciliationResult> {
  const evidence = new Evidence()
  return {
    asOf: result.asOf,
    findings: result.findings,
    asBuilt: presentAsBuilt(result.asBuilt),
    outcomes: result.outcomes.map((it) => outcomeIn(it, evidence)),
    discrepancies: result.discrepancies.map((it) => ({
      ...presentBody(it),
      outcome: result.outcomes.indexOf(it.outcome),
    })),
    advice: result.advice.map((it) => ({
      about: presentPart(it.about),
      advice: it.advice,
      says: adviceWords(it),
    })),
    ...evidence.tables,
  }
}
