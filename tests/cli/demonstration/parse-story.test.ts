import { describe, expect, test } from 'vitest'
import { parseStory } from '../../../src/cli/demonstration/parse-story.ts'

const good = `tells: A card and an inspection.
parcel: { number: 07-0001-0002, address: 1 Heron Hollow Rd }
permits:
  - number: 58-1
    enteredOn: 2026-02-01
    kind: new
    approvedOn: 6-10-58
    components:
      - { tag: tank, kind: tank, capacity: 500 gals. }
findings:
  - firm: upland
    submittedOn: 2026-05-14
    inspectedOn: 5/12/2026
    components:
      - { label: tank, key: 58-1/tank, kind: tank, outcome: found, diameter: 4'-0" }
expects: { status: matches, discrepancies: [] }
`
const faults = (text: string) => {
  const parsed = parseStory('stories/a-story.yaml', text)
  return parsed.ok ? [] : parsed.error.map(({ line, message }) => `${line}: ${message}`)
}

describe('a story', () => {
  test('is read as typed and as the records it makes, one parcel or several', () => {
    const parsed = parseStory('stories/a-story.yaml', good)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
    const { slug, asOf, parcels } = parsed.value
    expect([slug, asOf, parcels.length]).toEqual(['a-story', '2026-10-01', 1])
    const [permit] = parcels[0]!.permits
    expect(permit!.enteredOn).toBe('2026-02-01')
    expect(permit!.typed).not.toHaveProperty('enteredOn')
    expect(permit!.typed).toMatchObject({ approvedOn: '6-10-58' })
    expect(permit!.record).toMatchObject({
      approvedOn: '1958-06-10',
      components: [{ capacity: { gal: 500 } }],
    })
    expect(parcels[0]!.findings[0]!.record.components[0]!.diameter).toMatchObject({
      ft: 4,
      method: 'inside-tape',
    })
  })

  test('may tell of several parcels, but a list of one is a slip', () => {
    const [head, ...rest] = good.split('\n')
    const listed = (times: number) =>
      [head, 'parcels:', ...Array.from({ length: times }, () => indented(rest))].join('\n')
    expect(faults(listed(2))).toEqual([])
    expect(faults(listed(1))).toEqual([expect.stringContaining('one parcel needs no list')])
  })
})

const indented = (lines: readonly string[]): string =>
  lines.map((line, at) => `${at === 0 ? '  - ' : '    '}${line}`).join('\n')

describe('what is wrong is told at its line, all of it', () => {
  test('a key that no entry has, a length without its unit, a kind that is none', () => {
    const bad = good
      .replace('diameter: 4\'-0"', 'diameter: 4')
      .replace('kind: new', 'kind: newish')
      .replace('500 gals.', '500 gals., color: gray')
    expect(faults(bad)).toEqual([
      expect.stringMatching(/^6: .*\/permits\/0\/kind: write one of: new, repair/),
      expect.stringMatching(/^9: .*color: there is no field of this name/),
      expect.stringMatching(/^15: .*diameter/),
    ])
  })

  test('a parcel number of another county, a status that is none, a firm nobody knows', () => {
    const bad = good
      .replace('07-0001-0002', '7-1-2')
      .replace('status: matches', 'status: fine')
      .replace('firm: upland', 'firm: elsewhere')
    expect(faults(bad)).toEqual([
      expect.stringMatching(/^2: .*a parcel number of this county/),
      expect.stringMatching(/^11: .*write one of: upland, lowland, lakeside/),
      expect.stringMatching(/^16: .*write one of: action-needed/),
    ])
  })

  test('a correction of what a permit does not have, or to what is no value', () => {
    const decided = (corrects: string) =>
      good.replace(
        'expects:',
        `decisions:\n  - { on: 2026-06-01, kind: record-unclear, subject: 58-1/tank, action: correct-record, reason: seen, corrects: ${corrects} }\nexpects:`,
      )
    expect(faults(decided('{ permit: 58-1, component: tank, field: capacity, value: 500 gal }'))).toEqual([])
    expect(faults(decided('{ permit: 58-1, field: capacity, value: 500 gal }'))).toEqual([
      expect.stringMatching(/^17: .*capacity belongs to a component/),
    ])
    expect(faults(decided('{ permit: 58-1, component: tank, field: capacity, value: 5OO gal }'))).toEqual([
      expect.stringMatching(/^17: .*letter where a digit belongs/),
    ])
  })

  test('what is no YAML, and a key that stands twice', () => {
    expect(faults('tells: [')).toEqual([expect.stringContaining('not YAML')])
    expect(faults(`${good}asOf: 2026-01-01\nasOf: 2026-02-02\n`)).toEqual([
      expect.stringMatching(/^18: not YAML/),
    ])
  })
})
