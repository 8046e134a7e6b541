import { FOUND } from '../../catalog/component-findings.ts'
import { useOn } from '../../catalog/field.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { FindingsRecord } from '../../records/findings.ts'

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
