import { firstDay } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import { sayAhead } from '../permits/permit-faults.ts'

/** What the entry itself can't know: which day it is. */
export function inspectionAhead(record: FindingsRecord, today: PlainDate, at = ''): readonly EntryIssue[] {
  return (['inspectedOn', 'lastPumpedOn'] as const).flatMap((field) => {
    const day = record[field]
    if (day === null || firstDay(day) <= today) return []
    return [{ pointer: `${at}/${field}`, message: sayAhead(day, today) }]
  })
}

/** What only a submission can't do without: something that was inspected, and why a part that was found was not opened. */
export const notReady = (record: FindingsRecord): readonly EntryIssue[] => [
  ...nothingInspected(record),
  ...record.components.flatMap(({ label, outcome, opened, notOpenedBecause }, index) =>
    outcome === 'found' && (opened === 'port-only' || opened === 'not-opened') && notOpenedBecause === null
      ? [
          {
            pointer: `/components/${index}/notOpenedBecause`,
            message: `say why the cover of ${label} was not taken off`,
          },
        ]
      : [],
  ),
]

function nothingInspected(record: FindingsRecord): readonly EntryIssue[] {
  const { components, ground, notWalkedBecause, backup, discharge } = record
  const said = [ground, notWalkedBecause, backup, discharge].some((it) => it !== null)
  if (said || components.some(({ outcome }) => outcome !== 'not-looked-for')) return []
  const message = 'nothing was inspected: enter a part that was looked for, or how the ground looked'
  return [{ pointer: '/components', message }]
}
