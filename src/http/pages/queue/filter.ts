import { z } from 'zod'
import { isPlainDate } from '../../../base/plain-date.ts'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../../reconcile/kinds.ts'
import { DISCREPANCY_STATES, type DiscrepancyState } from '../../../reconcile/projection.ts'
import type { QueueFilter } from '../../../store/queue-heads.ts'

/** What a reviewer can filter the queue by, each with the states it means. */
export const SHOWN_STATES = {
  'to-decide': ['open', 'ground-moved'],
  decided: ['decided'],
  vanished: ['vanished'],
  all: DISCREPANCY_STATES,
} as const satisfies Readonly<Record<string, readonly DiscrepancyState[]>>
export type ShownState = keyof typeof SHOWN_STATES

export const QUEUE_PAGE = 40

/** An empty field filters nothing. What cannot be read is left out, and the page shows the filters it used. */
const word = <const T extends readonly [string, ...string[]]>(words: T) =>
  z.enum(words).optional().catch(undefined)

export const queueQuery = z.object({
  state: z
    .enum(Object.keys(SHOWN_STATES) as [ShownState, ...ShownState[]])
    .catch('to-decide')
    .default('to-decide'),
  severity: word(SEVERITIES),
  kind: word(DISCREPANCY_KINDS),
  since: z.string().refine(isPlainDate).optional().catch(undefined),
  parcel: z
    .string()
    .trim()
    .min(1)
    .max(80)
    .refine((text) => text.isWellFormed() && !text.includes('\u0000'))
    .optional()
    .catch(undefined),
  limit: z.literal(QUEUE_PAGE).catch(QUEUE_PAGE).default(QUEUE_PAGE),
  cursor: z.string().max(1_000).optional(),
})
export type QueueQuery = z.output<typeof queueQuery>

export const filterOf = ({ state, severity, kind, since, parcel }: QueueQuery): QueueFilter => ({
  states: SHOWN_STATES[state],
  kinds: kind === undefined ? [] : [kind],
  severities: severity === undefined ? [] : [severity],
  since: since === undefined ? undefined : new Date(since),
  parcel,
})

/** The address of the queue with one thing asked for otherwise; always from its first page. */
export function queueAddress(path: string, query: QueueQuery, change: Partial<QueueQuery>): string {
  const { state, severity, kind, since, parcel } = { ...query, ...change }
  const asked = { state: state === 'to-decide' ? undefined : state, severity, kind, since, parcel }
  const search = new URLSearchParams(
    Object.entries(asked).filter((entry): entry is [string, string] => entry[1] !== undefined),
  )
  return search.size === 0 ? path : `${path}?${search}`
}
