import { z } from 'zod'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../../reconcile/kinds.ts'
import { ACTORS } from '../../../reconcile/meaning/meaning.ts'
import { type Exhibit, type Outcome, VERDICTS } from '../../../reconcile/outcome.ts'
import type { Discrepancy, Reconciliation } from '../../../reconcile/reconcile.ts'
import { asBuilt, presentAsBuilt, presentOrigin } from './as-built.ts'
import { citation, day, step } from './basics.ts'
import { origin } from './source.ts'

const exhibit = z
  .object({
    what: z.string(),
    word: z.enum(['stated', 'found', 'required', 'derived']),
    asStated: z.string(),
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
      z
        .object({ kind: z.literal('rule'), says: z.string() })
        .meta({ description: 'Where the rule was printed, and whether anybody has read it there' }),
    ]),
  })
  .meta({ id: 'Exhibit', description: 'A piece of evidence: as stated, as used, and where it came from' })

const outcome = z
  .object({
    check: z.string().meta({ description: 'The check that asked; docs/discrepancies.md lists them' }),
    question: z.string(),
    subject: z.object({ key: z.string(), label: z.string(), kind: z.string() }),
    facet: z
      .string()
      .nullable()
      .meta({ description: 'Which of several such questions: of which day, which rule' }),
    verdict: z.enum(VERDICTS),
    raises: z.enum(DISCREPANCY_KINDS).nullable(),
    because: z.string(),
    certainty: z.object({ word: z.enum(['firm', 'likely', 'open']), because: z.string() }),
    exhibits: z.array(exhibit),
    steps: z.array(step),
    citations: z.array(citation),
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

const sentences = z.object({ firm: z.string(), reviewer: z.string(), agent: z.string() })
const next = z.object({ who: z.enum(ACTORS), what: z.string() })

/** What a discrepancy is, wherever one is told. */
export const discrepancyBody = {
  key: z.string().meta({ description: 'Stable from one reconciliation to the next' }),
  kind: z.enum(DISCREPANCY_KINDS),
  severity: z.enum(SEVERITIES).meta({
    description: 'About consequence: action before transfer or further use, review by a person, or a note',
  }),
  sentences: sentences.meta({ description: 'What it means, to each of the three audiences' }),
  next: next.meta({ description: 'Who has to act next' }),
}

const discrepancyRaised = z
  .object({ ...discrepancyBody, outcome })
  .meta({ id: 'DiscrepancyRaised', description: 'A difference, its evidence and what it means' })

export const reconciliationResult = z
  .object({
    asOf: day,
    findings: z.string().nullable(),
    asBuilt,
    outcomes: z.array(outcome).meta({ description: 'Every question asked, whatever its end' }),
    discrepancies: z.array(discrepancyRaised).meta({ description: 'Worst first' }),
    advice: z.array(z.object({ about: z.string(), says: z.string() })),
  })
  .meta({ id: 'ReconciliationResult', description: 'As-built against as-found, under the rules in force' })

function presentFrom(from: Exhibit['from']): z.output<typeof exhibit>['from'] {
  return from.kind === 'permit' ? { kind: 'permit', origin: presentOrigin(from.origin) } : { ...from }
}

export const outcomeShape = outcome
export const presentOutcome = (it: Outcome): z.output<typeof outcome> => ({
  check: it.check,
  question: it.question,
  subject: { ...it.subject },
  facet: it.facet,
  verdict: it.verdict,
  raises: it.raises,
  because: it.because,
  certainty: { ...it.certainty },
  exhibits: it.exhibits.map(({ what, word, asStated, asUsed, from }) => ({
    what,
    word,
    asStated,
    asUsed,
    from: presentFrom(from),
  })),
  steps: it.steps.map(({ says, formula, numbers, result }) => ({ says, formula, numbers, result })),
  citations: it.citations.map((cited) => ({ ...cited })),
  wouldSettle: it.wouldSettle && { ...it.wouldSettle },
})

export const presentBody = ({ key, kind, severity, sentences: says, next: then }: Discrepancy) => ({
  key,
  kind,
  severity,
  sentences: { ...says },
  next: { ...then },
})

export const presentResult = (result: Reconciliation): z.output<typeof reconciliationResult> => ({
  asOf: result.asOf,
  findings: result.findings,
  asBuilt: presentAsBuilt(result.asBuilt),
  outcomes: result.outcomes.map(presentOutcome),
  discrepancies: result.discrepancies.map((it) => ({
    ...presentBody(it),
    outcome: presentOutcome(it.outcome),
  })),
  advice: result.advice.map(({ about, says }) => ({ about, says })),
})
