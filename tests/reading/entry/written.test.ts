import { describe, expect, test } from 'vitest'
import { findingsExample, permitExample } from '../../../src/http/api/shapes/entries.ts'
import { type FindingsEntry, findingsEntry } from '../../../src/reading/entry/findings.ts'
import { type PermitEntry, permitEntry } from '../../../src/reading/entry/permit.ts'
import { findingsAsWritten, permitAsWritten } from '../../../src/reading/entry/written.ts'

const permits: readonly PermitEntry[] = [
  permitExample,
  { number: '1', kind: 'abandonment' },
  {
    number: '58-7',
    kind: 'new',
    components: [
      {
        tag: 'pit',
        kind: 'seepage-pit',
        diameter: { ft: 8.25 },
        effectiveDepth: { m: 1.8 },
        capacity: { gal: 500 },
      },
      { tag: 'well', kind: 'well', length: 'about 30 ft', action: 'mention', note: 'two\nlines' },
    ],
    unreadable: [{ pointer: '/bedrooms', note: '3 or 8' }],
  },
]

const findings: readonly FindingsEntry[] = [
  findingsExample,
  { inspectedOn: '2026-10-12' },
  {
    inspectedOn: '5/3/2026',
    components: [
      {
        label: 'tank',
        kind: 'tank',
        outcome: 'found',
        length: { length: '8 ft', method: 'by-eye', instrument: 'the apprentice' },
        width: 'about 4 ft',
        levelAboveOutlet: { below: '5 in' },
        sludgeDepth: { in: 12 },
        fix: { lat: 44.1, lon: -72.2, radiusFt: 12 },
      },
      {
        label: 'box',
        kind: 'distribution-box',
        outcome: 'not-found',
        searchedBy: ['probe'],
        searchedWithin: '10 ft',
      },
    ],
  },
]

describe('a record as it would be typed', () => {
  test.each(permits)('is read again as the same permit: $number', (entry) => {
    const record = permitEntry.parse(entry)
    expect(permitEntry.parse(permitAsWritten(record))).toEqual(record)
  })

  test.each(findings)('is read again as the same findings: $inspectedOn', (entry) => {
    const record = findingsEntry.parse(entry)
    expect(findingsEntry.parse(findingsAsWritten(record))).toEqual(record)
  })

  test('says a length as it was written', () => {
    const { components } = permitAsWritten(permitEntry.parse(permitExample))
    expect(components?.[0]?.capacity).toBe('1,000 gal')
    expect(findingsAsWritten(findingsEntry.parse(findings[2])).components?.[0]).toMatchObject({
      levelAboveOutlet: { below: '5 in' },
      width: { length: 'about 4 ft', method: 'inside-tape' },
    })
  })
})
