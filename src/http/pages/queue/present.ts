import { dayOf, daysBetween } from '../../../base/plain-date.ts'
import type { Queue } from '../../../operations/discrepancies/list-discrepancies.ts'
import { filedAt } from '../../../operations/systems/system-address.ts'
import { SEVERITIES, type Severity } from '../../../reconcile/kinds.ts'
import type { InQueue } from '../../../store/discrepancies.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { sentence } from '../../../words/sentence.ts'
import { titleOf } from '../../../words/titles.ts'
import { counted } from '../words/plain.ts'
import { type QueueQuery, queueAddress } from './filter.ts'

export type QueueRow = {
  readonly id: string
  readonly severity: Severity
  readonly title: string
  readonly about: string
  readonly parcel: string
  /** What its file is asked for by: the parcel, and which of its systems where it is not the parcel's own. */
  readonly at: string
  readonly address: string | null
  readonly says: string
  /** How long it has stood: `12 days`. */
  readonly age: string
  readonly moved: boolean
}

export type QueuePage = {
  readonly rows: readonly QueueRow[]
  /** How many of each severity pass the other filters; null past the first page. */
  readonly counts:
    | readonly {
        readonly severity: Severity
        readonly count: number
        readonly to: string
        readonly on: boolean
      }[]
    | null
  readonly all: string
}

/** `path`: the queue's own address. `now`: what ages are counted to. */
export function presentQueue({ rows, counts }: Queue, query: QueueQuery, path: string, now: Date): QueuePage {
  return {
    rows: rows.map((it) => presentRow(it, now)),
    counts:
      counts &&
      SEVERITIES.map((severity) => ({
        severity,
        count: counts[severity],
        to: queueAddress(path, query, { severity }),
        on: query.severity === severity,
      })),
    all: queueAddress(path, query, { severity: undefined }),
  }
}

const presentRow = (it: InQueue, now: Date): QueueRow => ({
  id: it.id,
  severity: it.severity,
  about: it.body.outcome.subject.label,
  parcel: it.parcelNumber,
  at: filedAt(it.parcelNumber, it),
  address: it.parcelAddress,
  title: titleOf(it.kind, it.body.outcome.subject, it.body.outcome.reason),
  says: sentence(reasonWords(it.body.outcome)),
  age: ageInWords(daysBetween(dayOf(it.raisedAt), dayOf(now))),
  moved: it.state === 'ground-moved',
})

/** To the day for a while, then to the month, then to the year. */
export function ageInWords(days: number): string {
  if (days <= 0) return 'today'
  if (days < 60) return counted(days, 'day')
  if (days < 730) return counted(Math.floor(days / 30.44), 'month')
  return counted(Math.floor(days / 365.25), 'year')
}
