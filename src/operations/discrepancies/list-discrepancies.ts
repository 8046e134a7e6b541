import { ok } from '../../base/result.ts'
import type { Severity } from '../../reconcile/kinds.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { discrepancyQueue, type InQueue, queueCounts } from '../../store/discrepancies.ts'
import type { QueueFilter, QueueKey } from '../../store/queue-heads.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import type { Answer } from '../refusal.ts'

export type Queue = {
  readonly rows: readonly InQueue[]
  /** How many of each severity pass the filter; on the first page only, because counting costs more than a page. */
  readonly counts: { readonly [S in Severity]: number } | null
}

/** The county's discrepancies, worst first and then oldest first; `parcel` is asked for by number or id. */
export const listDiscrepancies = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  filter: QueueFilter,
  after: QueueKey | undefined,
  most: number,
): Promise<Answer<Queue>> =>
  transact(context.database, actor, async (tx) => {
    const { county } = actor
    let asked = filter
    if (filter.parcel !== undefined) {
      const parcel = await parcelAsked(tx, county, filter.parcel)
      if (!parcel.ok) return ok({ rows: [], counts: { action: 0, review: 0, note: 0 } })
      asked = { ...filter, parcel: parcel.value.id }
    }
    const rows = await discrepancyQueue(tx, county, asked, after, most)
    return ok({ rows, counts: after ? null : await queueCounts(tx, county, asked) })
  })
