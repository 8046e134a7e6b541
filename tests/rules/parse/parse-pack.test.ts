import { describe, expect, test } from 'vitest'
import { faultInWords } from '../../../src/rules/parse/fault.ts'
import { parsePack } from '../../../src/rules/parse/parse-pack.ts'

const SOUND = `pack: alder/code
jurisdiction: { kind: county, name: Alder County }
title: Alder County Code
parameters:
  - name: tank.minimum-capacity
    governed-by: permit-issued
    entries:
      - from: 1986-02-05
        until: 2004-01-01
        value:
          by: bedrooms
          table: Table 1
          rows:
            - { bedrooms: 3, gal: 900 }
            - { bedrooms: 4, gal: 1200 }
          more: { rule: add-per-bedroom, gal: 250 }
        citations:
          - authority: Board of Health
            document: Code
            section: "12"
            read-at: https://example.org/code
            verified: read
      - from: 2004-01-01
        until: null
        value:
          by: flow
          table: Table 2
          pieces:
            - { below: 1500, times: 1.17, plus: 500 }
            - { times: 0.75, plus: 1125 }
        citations:
          - { verified: common-practice }
`

/** The faults of the sound pack after some of its lines were changed, as `line:col: message`. */
const faults = (...changes: readonly (readonly [line: number, text: string])[]): readonly string[] => {
  const lines = SOUND.split('\n')
  for (const [line, text] of changes) lines[line - 1] = text
  const parsed = parsePack('alder/code.yaml', lines.join('\n'))
  return parsed.ok ? [] : parsed.error.map((it) => faultInWords(it).replace(/^alder\/code\.yaml:/, ''))
}

test('a sound pack comes out whole, its keys in the program’s own case', () => {
  const parsed = parsePack('alder/code.yaml', SOUND)
  expect(parsed.ok && parsed.value.pack).toMatchObject({
    pack: 'alder/code',
    invented: false,
    extends: [],
    parameters: [
      {
        name: 'tank.minimum-capacity',
        governedBy: 'permit-issued',
        entries: [
          {
            from: '1986-02-05',
            value: { by: 'bedrooms', minimumGal: 0, rows: [{ bedrooms: 3, gal: 900 }, {}] },
            citations: [{ verified: 'read', readAt: 'https://example.org/code', words: null }],
          },
          { until: null, citations: [{ authority: 'common practice', document: 'no source' }] },
        ],
      },
    ],
  })
})

describe('a fault is told at its line and column', () => {
  test.each<[string, [number, string][], string[]]>([
    [
      'an unknown key',
      [[12, '          tabel: Table 1']],
      ['11:11: "table" is missing', '12:11: unknown key "tabel"'],
    ],
    [
      'a key twice',
      [[3, 'pack: alder/code']],
      ['1:1: "title" is missing', '3:1: this key stands twice in one place'],
    ],
    [
      'a key not in kebab-case',
      [[6, '    governedBy: installed']],
      ['6:5: the key "governedBy" is not in kebab-case (small letters and hyphens)'],
    ],
    [
      'an unknown parameter',
      [[5, '  - name: tank.capacity']],
      ['5:11: "tank.capacity" is not a parameter: docs/rules.md lists the names there are'],
    ],
    [
      'a wrong word from a list',
      [[6, '    governed-by: permit']],
      ['6:18: governed-by must be one of permit-issued, installed, inspected'],
    ],
    [
      'a day that does not exist',
      [[8, '      - from: 1986-02-30']],
      ['8:15: "1986-02-30": that month has no day 30'],
    ],
    [
      'dates out of order',
      [[9, '        until: 1986-02-05']],
      ['9:16: until 1986-02-05 is not after from 1986-02-05 (until is the first day it no longer holds)'],
    ],
    [
      'entries that overlap',
      [[9, '        until: 2004-01-02']],
      ['23:15: holds on days on which entry 1 of this parameter holds too'],
    ],
    ['no end written', [[9, '']], ['8:9: "until" is missing']],
    [
      'a number that is text',
      [[14, '            - { bedrooms: three, gal: 900 }']],
      ['14:27: bedrooms: expected number, received string'],
    ],
    [
      'rows out of order',
      [[15, '            - { bedrooms: 2, gal: 1200 }']],
      ['15:27: bedroom counts must rise row by row'],
    ],
    [
      'pieces out of order',
      [[30, '            - { up-to: 600, times: 2 }']],
      ['30:15: a piece must end above the piece before it'],
    ],
    [
      'an unknown kind of rule',
      [[11, '          by: rooms']],
      ['11:15: by must be one of bedrooms, flow, largest-of'],
    ],
    [
      'read, but where?',
      [[21, '            words: twelve hundred gallons']],
      ['18:13: "read-at" is missing'],
    ],
    [
      'not an address',
      [[21, '            read-at: the library']],
      ["21:22: must be an address (https://…) or 'file copy, no stable address'"],
    ],
    ['memory has no address', [[22, '            verified: from-memory']], ['21:13: unknown key "read-at"']],
    [
      'an unknown status',
      [[22, '            verified: hearsay']],
      ['22:23: verified must be one of read, second-hand, from-memory, common-practice'],
    ],
    [
      'no citation at all',
      [
        [31, '        note: nobody knows'],
        [32, ''],
      ],
      ['23:9: "citations" is missing: say where the value stands, or that it is common practice'],
    ],
    [
      'an anchor',
      [[2, 'jurisdiction: &here { kind: county, name: Alder County }']],
      ['2:21: the anchor &here is not allowed: packs have no aliases'],
    ],
    [
      'a bad name',
      [[1, 'pack: Alder']],
      ['1:7: a pack is named <place>/<topic> in small letters, digits and hyphens'],
    ],
  ])('%s', (_, changes, expected) => {
    expect(faults(...changes)).toEqual(expected)
  })
})

test('every fault of a file is told at once', () => {
  const told = faults(
    [2, 'jurisdiction: { kind: town, name: Alder County }'],
    [9, '        until: 1980-01-01'],
    [15, '            - { bedrooms: 4, gallons: 1200 }'],
    [22, '            verified: hearsay'],
    [30, '            - { times: fast }'],
  )
  expect(told.map((it) => it.split(':')[0])).toEqual(['2', '9', '15', '15', '22', '30'])
})

test('a table out of order says so though one of its rows is faulty too', () => {
  const told = faults(
    [14, '            - { bedrooms: 3, gal: nine hundred }'],
    [15, '            - { bedrooms: 2, gal: 1200 }'],
  )
  expect(told).toEqual([
    '14:35: gal: expected number, received string',
    '15:27: bedroom counts must rise row by row',
  ])
})

test('text that is no YAML says so, and where', () => {
  const parsed = parsePack('alder/code.yaml', 'pack: alder/code\n  title: x\n')
  expect(parsed.ok ? [] : parsed.error.map((it) => [it.line, it.message.split(':')[0]])).toContainEqual([
    1,
    'not YAML',
  ])
})

test('an empty file is a fault and not an empty pack', () => {
  const parsed = parsePack('alder/code.yaml', '')
  expect(parsed.ok).toBe(false)
})

test('items of a gathered parameter carry their own citations', () => {
  const text = `pack: alder/code
jurisdiction: { kind: county, name: Alder County }
title: Alder County Code
parameters:
  - name: expectations
    governed-by: installed
    entries:
      - from: null
        until: null
        value:
          - { id: near, about: tank, says: It lies near., citations: [{ verified: common-practice }] }
          - { id: near, about: tank, says: Twice., citations: [{ verified: common-practice }] }
        citations: [{ verified: common-practice }]
`
  const parsed = parsePack('alder/code.yaml', text)
  expect(parsed.ok ? [] : parsed.error.map(faultInWords)).toEqual([
    'alder/code.yaml:12:19: id "near" stands twice',
    'alder/code.yaml:13:20: here each item carries its own citations, not the entry',
  ])
})
