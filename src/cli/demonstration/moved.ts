import { isWholeDay, type PartialDate } from '../../base/partial-date.ts'
import { addDays, type PlainDate, plainDate } from '../../base/plain-date.ts'
import { must } from '../../base/result.ts'
import type { ParcelFile } from './story.ts'

/** Older dates are history and stay; from here on the stories are of the present and move with it. */
const PRESENT: PlainDate = must(plainDate('2024-01-01'))

/**
 * A parcel's file with all that happens in the story's present moved by some days: inspections, what was submitted, decided
 * or approved lately. A demonstration of today then shows inspections of this year, and only the one meant to be old is.
 */
export function moved(file: ParcelFile, days: number): ParcelFile {
  const move = (date: PlainDate): PlainDate => (date < PRESENT ? date : addDays(date, days))
  const maybe = (date: PartialDate | null): PartialDate | null =>
    date === null || !isWholeDay(date) ? date : move(date)
  return {
    ...file,
    permits: file.permits.map(({ enteredOn, record, ...permit }) => ({
      ...permit,
      ...(enteredOn ? { enteredOn: move(enteredOn) } : {}),
      record: { ...record, issuedOn: maybe(record.issuedOn), approvedOn: maybe(record.approvedOn) },
    })),
    findings: file.findings.map(({ submittedOn, record, ...inspection }) => ({
      ...inspection,
      submittedOn: move(submittedOn),
      record: {
        ...record,
        inspectedOn: move(record.inspectedOn),
        lastPumpedOn: maybe(record.lastPumpedOn),
      },
    })),
    decisions: file.decisions.map((decision) => ({ ...decision, on: move(decision.on) })),
  }
}
