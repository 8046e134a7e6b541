import { z } from 'zod'
import type { Reconciled } from '../../../operations/reconciliation/reconcile-parcel.ts'
import { DISCREPANCY_KINDS } from '../../../reconcile/kinds.ts'
import { DISCREPANCY_CHANGES, DISCREPANCY_STATES } from '../../../reconcile/projection.ts'
import type { Reason } from '../../../reconcile/reason.ts'
import type { Part } from '../../../records/part.ts'
import type { ChangeNoticed } from '../../../store/discrepancy-changes.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { sentence } from '../../../words/sentence.ts'
import { id, instant } from './basics.ts'
import { presentStatus, status } from './status.ts'

export const change = z
  .object({
    change: z.enum(DISCREPANCY_CHANGES),
    discrepancy: id,
    reconciliation: id,
    kind: z.enum(DISCREPANCY_KINDS),
    about: z.string(),
    before: z.string().nullable().meta({ description: 'What it came to before, in a sentence' }),
    after: z.string().nullable(),
    state: z.enum(DISCREPANCY_STATES).meta({
      description: 'Its state afterward: `ground-moved` if it was decided and its evidence has changed since',
    }),
    noticedAt: instant,
  })
  .meta({ id: 'Change', description: 'What one reconciliation changed about one discrepancy' })

const reasonTold = (subject: Part, reason: Reason | null): string | null =>
  reason && sentence(reasonWords({ subject, reason }))

export const presentChange = (it: ChangeNoticed): z.output<typeof change> => ({
  change: it.change,
  discrepancy: it.discrepancy,
  reconciliation: it.reconciliation,
  kind: it.body.kind,
  about: it.body.about.label,
  before: reasonTold(it.body.about, it.body.before),
  after: reasonTold(it.body.about, it.body.after),
  state: it.body.state,
  noticedAt: it.noticedAt.toISOString(),
})

/** What a write brought about: the reconciliation it led to, what that changed, and the status now. */
export const consequence = z
  .object({ reconciliation: id, changes: z.array(change), status })
  .meta({ id: 'Consequence', description: 'The reconciliation that this led to, and what it changed' })

export const presentConsequence = ({
  reconciliation,
  changes,
  status: now,
}: Reconciled): z.output<typeof consequence> => ({
  reconciliation: reconciliation.id,
  changes: changes.map(presentChange),
  status: presentStatus(now),
})
