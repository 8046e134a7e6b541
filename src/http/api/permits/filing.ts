import { z } from 'zod'
import type { FilingChanged } from '../../../operations/permits/change-filing.ts'
import { line, prose } from '../../../reading/entry/fields.ts'
import { DISCREPANCY_STATES } from '../../../reconcile/projection.ts'
import { DECISION_ACTIONS } from '../../../records/decision.ts'
import { FILING_ACTS, FILING_REASONS, PERMIT_STANDINGS } from '../../../records/filing.ts'
import type { FilingChange, PermitElsewhere } from '../../../store/filing-changes.ts'
import { FILING_REASON_WORDS } from '../../../words/filing.ts'
import { id, instant } from '../shapes/basics.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'

const note = prose(2000)
  .optional()
  .meta({ description: 'Your own words; only reviewers read them. Needed where the reason is `other`' })

/** What a reviewer asks for: one shape for each act, each with its own reasons. */
export const filingChangeBody = z
  .discriminatedUnion('act', [
    z.strictObject({
      act: z.literal('move'),
      reason: z.enum(FILING_REASONS.move),
      note,
      toParcel: line(80).meta({ description: 'The parcel that it belongs to, by number or id' }),
      system: line(80).optional().meta({ description: 'Which of its systems, where it has several' }),
    }),
    z.strictObject({ act: z.literal('void'), reason: z.enum(FILING_REASONS.void), note }),
    z.strictObject({ act: z.literal('restore'), reason: z.enum(FILING_REASONS.restore), note }),
    z.strictObject({
      act: z.literal('merge'),
      reason: z.enum(FILING_REASONS.merge),
      note,
      into: z.guid('is not an id').meta({ description: 'The permit that stays' }),
    }),
    z.strictObject({ act: z.literal('separate'), reason: z.enum(FILING_REASONS.separate), note }),
  ])
  .meta({
    id: 'FilingChangeBody',
    examples: [{ act: 'move', toParcel: '07-0412-0032', reason: 'parcel-misread' }],
  })

export const filingChange = z
  .object({
    id,
    revision: z.number(),
    act: z.enum(FILING_ACTS),
    reason: z.string(),
    says: z.string(),
    note: z.string().nullable().meta({ description: 'The reviewer’s own words; null for a firm' }),
    fromParcel: id,
    toParcel: id,
    other: id.nullable().meta({ description: 'The permit that it was merged into, or separated from' }),
    changedBy: id,
    changedAt: instant,
  })
  .meta({ id: 'FilingChange', description: 'A change of how a permit is filed' })

export const presentFilingChange = ({
  permit: _,
  changedAt,
  reason,
  ...it
}: FilingChange): z.output<typeof filingChange> => ({
  ...it,
  reason,
  says: FILING_REASON_WORDS[reason],
  changedAt: changedAt.toISOString(),
})

/** What is filed another way now: void, merged, or in another parcel’s file. */
export const permitElsewhere = z.object({
  id,
  number: z.string(),
  kind: z.string(),
  standing: z.enum(PERMIT_STANDINGS),
  mergedInto: id.nullable(),
  parcel: id,
  parcelNumber: z.string(),
})
export const presentElsewhere = (it: PermitElsewhere): z.output<typeof permitElsewhere> => ({ ...it })

export const filingConsequences = z.object({
  change: filingChange,
  consequences: z
    .array(consequence.extend({ parcel: id }))
    .meta({ description: 'Of every parcel whose as-built it changes' }),
  affectedDecisions: z
    .array(
      z.object({
        decision: id,
        parcel: id,
        discrepancy: id,
        action: z.enum(DECISION_ACTIONS),
        because: z.enum(['corrects-this-permit', 'difference-changed']),
        state: z.enum(DISCREPANCY_STATES).nullable(),
      }),
    )
    .meta({ description: 'Decisions in force that stood on the permit. None is undone: look at each again' }),
})

export const presentFilingConsequences = ({
  change,
  reconciled,
  decisions,
}: FilingChanged): z.output<typeof filingConsequences> => ({
  change: presentFilingChange(change),
  consequences: reconciled.map((run) => ({ parcel: run.parcel, ...presentConsequence(run) })),
  affectedDecisions: decisions.map((it) => ({ ...it })),
})
