import { dayOf } from '../../../base/plain-date.ts'
import { filedAt } from '../../../operations/systems/system-address.ts'
import type { OwnInspection } from '../../../store/own-inspections.ts'
import { VOICES } from '../../../words/agent/status.ts'
import { dayInWords } from '../words/dates.ts'

export type InspectionLine = {
  readonly parcel: string
  /** What its pages are asked for by: the parcel, and which of its systems where it is not the parcel's own. */
  readonly at: string
  readonly address: string | null
  readonly inspectedOn: string
  readonly says: string
  readonly status: string | null
}

/** Drafts, which the firm still has to finish, apart from what is submitted. */
export function presentInspections(inspections: readonly OwnInspection[]): {
  readonly drafts: readonly InspectionLine[]
  readonly submitted: readonly InspectionLine[]
} {
  const of = (state: OwnInspection['state']) => inspections.filter((it) => it.state === state).map(line)
  return { drafts: of('draft'), submitted: of('submitted') }
}

const line = (it: OwnInspection): InspectionLine => ({
  parcel: it.parcelNumber,
  at: filedAt(it.parcelNumber, it),
  address: it.parcelAddress,
  inspectedOn: it.inspectedOn,
  says: standing(it),
  status: it.word && VOICES.en.word[it.word],
})

function standing({ state, amends, amended, changedAt, submittedAt }: OwnInspection): string {
  if (state === 'draft') {
    return `${amends ? 'amendment, ' : ''}not submitted, last changed ${dayInWords(dayOf(changedAt))}`
  }
  const submitted = submittedAt ? `submitted ${dayInWords(dayOf(submittedAt))}` : 'submitted'
  return amended ? `${submitted}, amended later` : submitted
}
