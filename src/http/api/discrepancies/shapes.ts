import { z } from 'zod'
import type { DiscrepancyRead } from '../../../operations/discrepancies/read-discrepancy.ts'
import { CORRECTABLE } from '../../../reading/entry/correction.ts'
import { line, prose } from '../../../reading/entry/fields.ts'
import { VERDICTS } from '../../../reconcile/outcome.ts'
import { DISCREPANCY_STATES } from '../../../reconcile/projection.ts'
import { AWAITS, DECISION_ACTIONS } from '../../../records/decision.ts'
import type { Decision } from '../../../store/decisions.ts'
import type { InQueue, StandingDiscrepancy } from '../../../store/discrepancies.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { sentence } from '../../../words/sentence.ts'
import { id, instant } from '../shapes/basics.ts'
import { change, presentChange } from '../shapes/changes.ts'
import { discrepancyBody, outcomeShape, presentBody, presentOutcome } from '../shapes/outcome.ts'

const standing = {
  id,
  parcel: z.object({ id, number: z.string(), address: z.string().nullable() }),
  system: id.meta({ description: 'The system; a parcel’s own has the parcel’s id' }),
  ...discrepancyBody,
  state: z.enum(DISCREPANCY_STATES).meta({
    description: '`ground-moved`: decided, but the evidence has changed since',
  }),
  about: z.string(),
  because: z.string().meta({ description: 'One sentence with the numbers in it' }),
  verdict: z.enum(VERDICTS),
  certainty: z.enum(['firm', 'likely', 'open']),
  reconciliation: id,
  decision: id.nullable().meta({ description: 'The decision in force' }),
  raisedAt: instant,
  changedAt: instant,
  revision: z.number(),
}

export const discrepancyInQueue = z.object(standing).meta({
  id: 'DiscrepancyInQueue',
  description: 'A difference between the record and the findings, as it is now',
})

const presentStanding = (
  it: StandingDiscrepancy,
  parcel: { readonly number: string; readonly address: string | null },
) => ({
  id: it.id,
  parcel: { id: it.parcel, number: parcel.number, address: parcel.address },
  system: it.system,
  ...presentBody(it.body),
  state: it.state,
  about: it.body.outcome.subject.label,
  because: sentence(reasonWords(it.body.outcome)),
  verdict: it.body.outcome.verdict,
  certainty: it.body.outcome.certainty.word,
  reconciliation: it.reconciliation,
  decision: it.decision,
  raisedAt: it.raisedAt.toISOString(),
  changedAt: it.changedAt.toISOString(),
  revision: it.revision,
})

export const presentInQueue = (it: InQueue): z.output<typeof discrepancyInQueue> =>
  presentStanding(it, { number: it.parcelNumber, address: it.parcelAddress })

export const presentOfParcel = presentStanding

/** Written as a reviewer means it: a length as people write it for a length, a number for a count, two ties for a tie. */
const value = z.union([z.string().max(200), z.number(), z.record(z.string().max(40), z.unknown())])

export const decision = z
  .object({
    id,
    action: z.enum(DECISION_ACTIONS),
    reason: z.string(),
    asks: z.string().nullable(),
    correction: z
      .object({ permit: id, component: z.string().nullable(), field: z.enum(CORRECTABLE), value })
      .nullable()
      .meta({ description: 'The value as it was written' }),
    supersedes: id.nullable(),
    supersededBy: id.nullable(),
    decidedBy: id,
    decidedAt: instant,
  })
  .meta({ id: 'Decision', description: 'What a reviewer did about a discrepancy; superseded, never deleted' })

export const presentDecision = (it: Decision): z.output<typeof decision> => ({
  id: it.id,
  action: it.action,
  reason: it.reason,
  asks: it.asks,
  correction: it.correction && {
    permit: it.correction.permit,
    component: it.correction.component,
    field: it.correction.field,
    value: it.correction.written as z.output<typeof value>,
  },
  supersedes: it.supersedes,
  supersededBy: it.supersededBy,
  decidedBy: it.decidedBy,
  decidedAt: it.decidedAt.toISOString(),
})

export const discrepancy = z
  .object({
    ...standing,
    outcome: outcomeShape,
    decisions: z.array(decision).meta({ description: 'Oldest first, with the superseded ones' }),
    changes: z.array(change).meta({ description: 'Its history, oldest first' }),
  })
  .meta({ id: 'Discrepancy', description: 'A difference with its evidence, its decisions and its history' })

export const presentDiscrepancy = ({
  parcel,
  discrepancy: it,
  decisions,
  changes,
}: DiscrepancyRead): z.output<typeof discrepancy> => ({
  ...presentStanding(it, parcel),
  outcome: presentOutcome(it.body.outcome),
  decisions: decisions.map(presentDecision),
  changes: changes.map(presentChange),
})

export const decisionBody = z
  .strictObject({
    action: z.enum(DECISION_ACTIONS).meta({
      description:
        '`correct-record` and `accept` close the matter; `require-permit` and `require-repair` leave something to the ' +
        'owner, `ask-remeasurement` to the firm, and it stays open until that is on file',
    }),
    reason: prose(4000)
      .refine((text) => text.trim() !== '', 'say why: the reason has to stand up later')
      .meta({ description: 'The reason, for the record' }),
    asks: line(500).nullish().meta({ description: 'What is required, in words' }),
    correction: z
      .strictObject({
        permit: z.guid('is not an id').meta({ description: 'The permit whose value it corrects' }),
        component: line(200).nullish().meta({
          description: 'The component’s key in the as-built; leave out for a value of the whole system',
        }),
        field: z.enum(CORRECTABLE),
        value: value.meta({ description: 'As the permit’s own entry takes it', examples: ['750 gal'] }),
      })
      .nullish()
      .meta({ description: 'With `correct-record`, and only then' }),
    supersedes: z.guid('is not an id').nullish().meta({
      description: 'The decision in force, if there is one: naming it replaces it',
    }),
  })
  .superRefine(
    (entry, context) => {
      const { action, correction, asks } = entry ?? {}
      if (action === 'correct-record' && !correction) {
        const message = 'is missing: say which value of which permit is corrected to what'
        context.addIssue({ code: 'custom', path: ['correction'], message })
      }
      if (action && action !== 'correct-record' && correction) {
        const message = `goes with correct-record only, and this is ${action}`
        context.addIssue({ code: 'custom', path: ['correction'], message })
      }
      if (action && asks && AWAITS[action] === null) {
        const message = `${action} asks nothing of anybody: leave it out`
        context.addIssue({ code: 'custom', path: ['asks'], message })
      }
    },
    { when: () => true },
  )
  .meta({
    id: 'DecisionEntry',
    examples: [
      { action: 'require-permit', reason: 'The line was replaced and no permit is on file.' },
      {
        action: 'correct-record',
        reason: 'The card reads 750, not 1,000: the stroke of the 7 is faint.',
        correction: {
          permit: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11',
          component: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11/tank',
          field: 'capacity',
          value: '750 gal',
        },
      },
    ],
  })
