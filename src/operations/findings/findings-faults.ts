import { firstDay } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import { FOUND } from '../../catalog/component-findings.ts'
import { useOn } from '../../catalog/field.ts'
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

/** What only a submission can't do without: something that was inspected, and why a part that was found was not opened. */
export const notReady = (record: FindingsRecord): readonly EntryIssue[] => [
  ...nothingInspected(record),
  ...withoutReference(record),
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

/** A test says nothing without the water that was run in, and a level nothing against an invert that the part does not have. */
function withoutReference({ components, testVolume, testMinutes }: FindingsRecord): readonly EntryIssue[] {
  const tested = components.some(({ levelAfterTest }) => (levelAfterTest ?? null) !== null)
  const volume =
    (testVolume ?? null) === null && (tested || (testMinutes ?? null) !== null)
      ? [
          {
            pointer: '/testVolume',
            message: 'a test needs its volume: how much water was run in? The readings are kept',
          },
        ]
      : []
  const against = components.flatMap(({ kind, label, levelAboveOutlet, levelAboveInlet }, index) => {
    const at = (field: 'levelAboveOutlet' | 'levelAboveInlet', is: string, other: string) => ({
      pointer: `/components/${index}/${field}`,
      message: `${label} has no ${is}: give its level against the ${other}. What you wrote is kept`,
    })
    const has = (field: 'levelAboveOutlet' | 'levelAboveInlet') => useOn(FOUND[field], kind) !== undefined
    return [
      ...(levelAboveOutlet && !has('levelAboveOutlet') && has('levelAboveInlet')
        ? [at('levelAboveOutlet', 'outlet', 'inlet')]
        : []),
      ...(levelAboveInlet && !has('levelAboveInlet') && has('levelAboveOutlet')
        ? [at('levelAboveInlet', 'inlet to read from', 'outlet')]
        : []),
    ]
  })
  return [...volume, ...against]
}

function nothingInspected(record: FindingsRecord): readonly EntryIssue[] {
  const { components, ground, notWalkedBecause, backup, discharge } = record
  const said = [ground, notWalkedBecause, backup, discharge].some((it) => it !== null)
  if (said || components.some(({ outcome }) => outcome !== 'not-looked-for')) return []
  const message = 'nothing was inspected: enter a part that was looked for, or how the ground looked'
  return [{ pointer: '/components', message }]
}
