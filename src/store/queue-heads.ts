import { type RawBuilder, sql } from 'kysely'
import type { DiscrepancyKind, Severity } from '../reconcile/kinds.ts'
import { DISCREPANCY_STATES, type DiscrepancyState } from '../reconcile/projection.ts'
import { RANKS } from './queue-ranks.ts'

export type QueueFilter = {
  readonly states: readonly DiscrepancyState[]
  readonly kinds: readonly DiscrepancyKind[]
  readonly severities: readonly Severity[]
  /** Changed at that instant or later. */
  readonly since: Date | undefined
  readonly parcel: string | undefined
}

/** Its own system's, and those of every other that serves it or lies on it. */
export const ofParcel = (
  parcel: string,
): RawBuilder<boolean> => sql<boolean>`(d.system = ${parcel} or d.system in (
  select x.system from system_parcel x where x.county = d.county and x.parcel = ${parcel}))`

/** Where a page of the queue ended: worst first, then oldest first. */
export type QueueKey = { readonly rank: number; readonly raisedAt: Date; readonly id: string }

/** More ways than this through the indexes, and kinds are looked at row by row after all. */
const MOST_ARMS = 100

const NOTHING = sql``

/**
 * The ids of one page of the queue. An index gives its rows in the queue's order only where everything before the order is
 * one value: so each state, kind and severity that is asked for is its own walk down an index, which stops after a page,
 * and the page is the first of what they found. What a page costs depends neither on how long the queue is nor on how far
 * down it lies.
 */
export function queueHeads(
  county: string,
  filter: QueueFilter,
  after: QueueKey | undefined,
  most: number,
): RawBuilder<string> {
  const states = filter.states.length > 0 ? filter.states : DISCREPANCY_STATES
  const ranks = filter.severities.length > 0 ? filter.severities.map((it) => RANKS[it]) : [null]
  const apart = states.length * ranks.length * filter.kinds.length <= MOST_ARMS
  const kinds = filter.kinds.length === 0 ? [null] : apart ? filter.kinds.map((it) => [it]) : [filter.kinds]
  const { since, parcel } = filter
  const rest = [
    since ? sql`and d.changed_at >= ${since}` : NOTHING,
    parcel ? sql`and ${ofParcel(parcel)}` : NOTHING,
  ]
  const arms = states.flatMap((state) =>
    ranks
      .filter((rank) => rank === null || !after || rank >= after.rank)
      .flatMap((rank) =>
        kinds.map(
          (some) => sql`(select d.id, d.severity_rank, d.raised_at from discrepancy d
          where d.county = ${county} and d.state = ${state}
          ${some === null ? NOTHING : some.length === 1 ? sql`and d.kind = ${some[0]}` : sql`and d.kind = any (${[...some]}::text[])`}
          ${rank === null ? NOTHING : sql`and d.severity_rank = ${rank}::smallint`} ${sql.join(rest, sql` `)} ${behind(rank, after)}
          order by d.severity_rank, d.raised_at, d.id limit ${most})`,
        ),
      ),
  )
  if (arms.length === 0) return sql<string>`(select null::uuid where false)`
  return sql<string>`(select id from (${sql.join(arms, sql` union all `)}) arms
    order by severity_rank, raised_at, id limit ${most})`
}

/** What comes after where the last page ended; within one severity that is told by the day and the id alone. */
function behind(rank: number | null, after: QueueKey | undefined): RawBuilder<unknown> {
  if (!after || (rank !== null && rank > after.rank)) return NOTHING
  const place = sql`${after.raisedAt}::timestamptz, ${after.id}::uuid`
  return rank === null
    ? sql`and (d.severity_rank, d.raised_at, d.id) > (${after.rank}::smallint, ${place})`
    : sql`and (d.raised_at, d.id) > (${place})`
}
