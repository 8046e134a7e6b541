import { dayOf } from '../../../base/plain-date.ts'
import type { OwnVisit } from '../../../store/own-visits.ts'
import { dayInWords } from '../words/dates.ts'
import { STATUS_HEAD } from '../words/status.ts'

export type VisitLine = {
  readonly parcel: string
  readonly address: string | null
  readonly visitedOn: string
  readonly says: string
  readonly status: string | null
}

/** Drafts, which still ask something of the firm, apart from what is handed in. */
export function presentVisits(visits: readonly OwnVisit[]): {
  readonly drafts: readonly VisitLine[]
  readonly submitted: readonly VisitLine[]
} {
  const of = (state: OwnVisit['state']) => visits.filter((it) => it.state === state).map(line)
  return { drafts: of('draft'), submitted: of('submitted') }
}

const line = (it: OwnVisit): VisitLine => ({
  parcel: it.parcelNumber,
  address: it.parcelAddress,
  visitedOn: it.visitedOn,
  says: standing(it),
  status: it.word && STATUS_HEAD[it.word],
})

function standing({ state, amends, amended, changedAt, submittedAt }: OwnVisit): string {
  if (state === 'draft') {
    return `${amends ? 'amendment, ' : ''}not handed in, last changed ${dayInWords(dayOf(changedAt))}`
  }
  const handed = submittedAt ? `handed in ${dayInWords(dayOf(submittedAt))}` : 'handed in'
  return amended ? `${handed}, amended since` : handed
}
