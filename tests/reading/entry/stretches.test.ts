import { describe, expect, test } from 'vitest'
import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { readEntry } from '../../../src/reading/entry/read-entry.ts'
import { findingsAsWritten, permitAsWritten } from '../../../src/reading/entry/written.ts'

const found = (more: object) => ({
  inspectedOn: '2026-10-12',
  components: [{ label: 'line', kind: 'effluent-line', outcome: 'found', measuredFrom: 'tank', ...more }],
})
const faults = (more: object) => {
  const read = readEntry(findingsEntry, found(more))
  return read.ok
    ? []
    : read.error.map(({ pointer, message }) => `${pointer.replace('/components/0/', '')}: ${message}`)
}
const stretch = (from: string, to: string, more: object = {}) => ({ from, to, ...more })

describe('the stretches of a line', () => {
  test('are read, and written again as they were', () => {
    const entry = found({
      segments: [
        stretch('0 ft', `31'-6"`, { material: 'vitrified-clay' }),
        stretch('31.5 ft', '60 ft', { material: 'pvc' }),
      ],
      defects: [{ at: '42 ft', seen: 'root-intrusion' }],
    })
    const record = findingsEntry.parse(entry as never)
    expect(record.components[0]).toMatchObject({
      segments: [{ from: { ft: 0 }, to: { ft: 31.5 }, material: 'vitrified-clay' }, { to: { ft: 60 } }],
      defects: [{ at: { ft: 42, method: 'wheel' }, to: null, seen: 'root-intrusion' }],
    })
    expect(findingsEntry.parse(findingsAsWritten(record))).toEqual(record)
  })

  test('stand on a permit too, and there without saying from where', () => {
    const record = permitEntry.parse({
      number: '09-R-3',
      kind: 'repair',
      components: [
        {
          tag: 'line',
          kind: 'effluent-line',
          action: 'alter',
          segments: [stretch('22 ft', '40 ft', { material: 'pvc' })],
        },
      ],
    } as never)
    expect(record.components[0]!.segments).toHaveLength(1)
    expect(permitEntry.parse(permitAsWritten(record))).toEqual(record)
  })

  test('none is nothing said', () => {
    expect(findingsEntry.parse(found({ segments: [] }) as never).components[0]!.segments).toBeNull()
  })

  test.each([
    [
      'overlap',
      { segments: [stretch('0 ft', '31 ft'), stretch('28 ft', '60 ft')] },
      /segments\/1\/from: lies 3 ft over the stretch that ends at 31 ft/,
    ],
    [
      'end before they begin',
      { segments: [stretch('31 ft', '12 ft')] },
      /segments\/0\/to: 12 ft is not beyond 31 ft/,
    ],
    [
      'go beyond the line',
      { length: '52 ft', segments: [stretch('30 ft', '60 ft')] },
      /segments\/0\/to: 60 ft lies beyond the line’s length, 52 ft/,
    ],
    [
      'start nowhere',
      { measuredFrom: undefined, segments: [stretch('0 ft', '31 ft')] },
      /measuredFrom: say where/,
    ],
    ['lack an end', { segments: [{ from: '0 ft' }] }, /segments\/0\/to/],
    [
      'hold a defect beyond the line',
      { length: '52 ft', defects: [{ at: '70 ft', seen: 'crack' }] },
      /defects\/0\/at: 70 ft lies beyond/,
    ],
  ] as const)('that %s are asked about', (_, more, says) => {
    expect(faults(more)).toHaveLength(1)
    expect(faults(more)[0]).toMatch(says)
  })

  test('a camera’s counter may run 3 ft over the tape; two stretches may meet within the foot they are told to', () => {
    expect(faults({ length: '52 ft', segments: [stretch('30 ft', '54 ft')] })).toEqual([])
  })
})
