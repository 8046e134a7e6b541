import type { PlainDate } from '../../base/plain-date.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { FindingsRecord } from '../../records/findings.ts'

/** What the entry itself can't know: which day it is. */
export function inspectionAhead(record: FindingsRecord, today: PlainDate): readonly EntryIssue[] {
  return (['inspectedOn', 'lastPumpedOn'] as const).flatMap((field) => {
    const day = record[field]
    if (day === null || day <= today) return []
    return [{ pointer: `/${field}`, message: `${day} is in the future: today is ${today}` }]
  })
}
