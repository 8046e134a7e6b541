import { firstDay } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import { asBuiltOn } from '../../records/fold.ts'
import { sayAhead } from '../permits/permit-faults.ts'

/** What the entry itself can't know: which day it is. */
export function inspectionAhead(record: FindingsRecord, today: PlainDate, at = ''): readonly EntryIssue[] {
  return (['inspectedOn', 'lastPumpedOn'] as const).flatMap((field) => {
    const day = record[field]
    if (day === null || firstDay(day) <= today) return []
    return [{ pointer: `${at}/${field}`, message: sayAhead(day, today) }]
  })
}

/**
 * Keys that name no component of the file, on the day of the inspection or now: a finding that hangs on nothing would
 * stand as a part of no record.
 */
export function keysNotOnRecord(
  { inspectedOn, components }: FindingsRecord,
  { permits, corrections, asOf, system }: Pick<ReconcileInput, 'permits' | 'corrections' | 'asOf' | 'system'>,
  at = '',
): readonly EntryIssue[] {
  if (components.every(({ key }) => key === null)) return []
  const keys = new Set(
    [inspectedOn, asOf].flatMap((on) =>
      asBuiltOn(permits, corrections, on, system?.serves).components.map((it) => it.key),
    ),
  )
  const known =
    keys.size === 0 ? 'nothing is on record' : `on record are ${[...keys].slice(0, 12).join(', ')}`
  return components.flatMap(({ key }, index) =>
    key === null || keys.has(key)
      ? []
      : [
          {
            pointer: `${at}/components/${index}/key`,
            message: `"${key}" is not on record: leave the key out, or write one that is; ${known}`,
          },
        ],
  )
}
