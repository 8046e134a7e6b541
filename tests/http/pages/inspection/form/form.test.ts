import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { presentFindingsRecord } from '../../../../../src/http/api/shapes/findings-record.ts'
import { formOf } from '../../../../../src/http/pages/inspection/form/from-record.ts'
import { readForm } from '../../../../../src/http/pages/inspection/form/read.ts'
import {
  EMPTY_FORM,
  type InspectionForm,
  type PartForm,
} from '../../../../../src/http/pages/inspection/form/typed.ts'
import { METHOD_NAMES } from '../../../../../src/measure/methods.ts'
import { findingsEntry } from '../../../../../src/reading/entry/findings.ts'
import { COMPONENT_KINDS, MATERIALS, VESSEL_SHAPES } from '../../../../../src/records/component.ts'
import { CONDITIONS, NOT_REACHED_REASONS, SEARCH_METHODS } from '../../../../../src/records/findings.ts'

const one = <T>(list: readonly T[]) => fc.constantFrom(...list)
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined, freq: 2 })
/** Lengths in the ways people write them. */
const written = one([
  '4\'-6"',
  '54 in',
  '4.5 ft',
  '1.37 m',
  "8'",
  'about 8 ft',
  '23\'-6 1/2"',
  '106.2 ft',
  '4 ft 6 in',
])
const length = fc.oneof(
  written,
  fc.record({
    length: written,
    method: one(METHOD_NAMES),
    instrument: maybe(one(['the new tape', 'rod 2'])),
  }),
  fc.record({ ft: one([4.5, 8, 0.25]) }),
  fc.record({ in: one([54, 7.5]) }),
)
const level = fc.oneof(
  fc.record({ above: one(['2 in', '0 in', '0.0 ft']) }),
  fc.record({ below: one(['5 in', '1\'-1"']), method: one(METHOD_NAMES) }),
)
const LENGTHS = [
  'length',
  'width',
  'diameter',
  'liquidDepth',
  'insideHeight',
  'wallThickness',
  'effectiveDepth',
] as const
const MORE_LENGTHS = [
  'depthToTop',
  'pipeDiameter',
  'scumThickness',
  'scumBottomBelow',
  'sludgeDepth',
  'outletDeviceBelow',
  'outletDeviceAbove',
  'sondeDepth',
  'cameraRun',
] as const
const found = fc.record({
  outcome: fc.constant('found' as const),
  searchedBy: maybe(fc.subarray([...SEARCH_METHODS])),
  searchedWithin: maybe(length),
  shape: maybe(one(VESSEL_SHAPES)),
  ...(Object.fromEntries([...LENGTHS, ...MORE_LENGTHS].map((name) => [name, maybe(length)])) as Record<
    string,
    fc.Arbitrary<unknown>
  >),
  capacity: maybe(one(['1,000 gal', '3785 L'])),
  compartments: maybe(fc.integer({ min: 1, max: 9 })),
  count: maybe(fc.integer({ min: 1, max: 99 })),
  material: maybe(one(MATERIALS)),
  tie: maybe(
    fc.record({
      a: length,
      b: length,
      side: maybe(one(['away', 'toward'])),
      sideWords: maybe(one(['rear of house'])),
    }),
  ),
  condition: maybe(one(CONDITIONS)),
  conditionWords: maybe(one(['Cracked across.\nWet.'])),
  levelAboveOutlet: maybe(level),
  lidSecured: maybe(fc.boolean()),
  riserToGrade: maybe(fc.boolean()),
  fix: maybe(
    fc.record({
      lat: one([41.5, -0.25]),
      lon: one([-90.125]),
      radiusFt: one([16, 9.84]),
      coverage: one([0.5, 0.68, 0.95]),
    }),
  ),
  note: maybe(one(['Under the deck.'])),
})
const notFound = fc.record({
  outcome: fc.constant('not-found' as const),
  searchedBy: fc.subarray([...SEARCH_METHODS], { minLength: 1 }),
  searchedWithin: maybe(length),
  note: maybe(one(['Twice.'])),
})
const notReached = fc.record({
  outcome: fc.constant('not-reached' as const),
  notReachedBecause: one(NOT_REACHED_REASONS),
})
const notLooked = fc.record({ outcome: fc.constant('not-looked-for' as const) })
const outcome = fc.oneof({ weight: 4, arbitrary: found }, notFound, notReached, notLooked)
const components = fc
  .array(fc.tuple(outcome, one(COMPONENT_KINDS), fc.boolean()), { maxLength: 4 })
  .map((list) =>
    list.map(([it, kind, keyed], index) => ({
      ...it,
      kind,
      label: `part ${index}`,
      ...(keyed ? { key: `p/${index}` } : {}),
    })),
  )
const inspection = fc.record({
  inspectedOn: one(['2026-10-12', '10/12/26']),
  occupancy: maybe(one(['occupied', 'vacant', 'unknown'] as const)),
  people: maybe(fc.integer({ min: 0, max: 9 })),
  bedroomsCounted: maybe(fc.integer({ min: 0, max: 9 })),
  lastPumpedOn: maybe(one(['2024-05-01'])),
  reference: fc.record({
    a: fc.constant('rear left corner'),
    b: fc.constant('rear right corner'),
    baseline: maybe(length),
    wall: maybe(one(['front', 'rear', 'left', 'right'] as const)),
    bearingDeg: maybe(one([0, 271.5])),
  }),
  components,
  notes: maybe(one(['All dry.\nTwo dogs.'])),
})

describe('a form and a record', () => {
  test('findings that are opened in the form and read again are the same findings, whoever wrote them', () => {
    fc.assert(
      fc.property(inspection, (entry) => {
        const record = findingsEntry.parse(entry)
        const read = readForm(formOf(record, []))
        expect(read.faults).toEqual({})
        expect(rounded(read.record)).toEqual(rounded(record))
      }),
      { numRuns: 300 },
    )
  })

  test('as the API answers them too', () => {
    fc.assert(
      fc.property(inspection, (entry) => {
        const record = findingsEntry.parse(entry)
        const told = JSON.parse(JSON.stringify(presentFindingsRecord(record)))
        expect(formOf(told, [])).toEqual(formOf(record, []))
      }),
      { numRuns: 100 },
    )
  })
})

/** A metre is 1/0.3048 ft one way and 0.3048⁻¹ the other: they differ in the last digit that a computer keeps. */
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_, it) => (typeof it === 'number' ? Number(it.toPrecision(12)) : it))

describe('faults stand beside the field they are in', () => {
  const tank = (typed: PartForm['typed']): InspectionForm => ({
    ...EMPTY_FORM,
    start: { inspectedOn: '2026-10-12' },
    parts: [{ id: 'tank', key: 'p/tank', label: 'tank', kind: 'tank', typed }],
  })
  const faultsOf = (form: InspectionForm) => readForm(form).faults

  test.each([
    ['a length with no unit', { outcome: 'found', length: '7.10' }, 'length', /no unit.*7'-10"/],
    ['a range', { outcome: 'found', width: '4-6' }, 'width', /may be one length or the two ends of a range/],
    ['a letter for a digit', { outcome: 'found', capacity: '1O00 gal' }, 'capacity', /O/],
    ['a count in words', { outcome: 'found', compartments: 'two' }, 'compartments', /number/],
    ['one tie', { outcome: 'found', 'tie.a': '12 ft' }, 'tie.b', /both ties/],
    [
      'a tie with no corners',
      { outcome: 'found', 'tie.a': '12 ft', 'tie.b': '9 ft' },
      'tie.a',
      /corners A and B/,
    ],
    [
      'a level with no side',
      { outcome: 'found', levelAboveOutlet: '2 in' },
      'levelAboveOutlet',
      /above or below/,
    ],
    [
      'a side with no level',
      { outcome: 'found', 'levelAboveOutlet.side': 'below' },
      'levelAboveOutlet',
      /how far below/,
    ],
    ['no outcome', { length: '8 ft' }, 'outcome', /whether it was found/],
    ['a search with no method', { outcome: 'not-found' }, 'searchedBy', /how it was searched/],
    ['not reached and no reason', { outcome: 'not-reached' }, 'notReachedBecause', /why/],
  ] as const)('%s', (_, typed, field, says) => {
    const faults = faultsOf(tank(typed))
    expect(Object.keys(faults)).toEqual(['tank'])
    expect(faults.tank?.[field]).toMatch(says)
  })

  test('the day of the inspection and what is asked once', () => {
    const start = { inspectedOn: '', people: 'three', bedroomsCounted: '-1', 'reference.a': 'porch corner' }
    const { start: faults } = faultsOf({ ...EMPTY_FORM, start })
    expect(Object.keys(faults ?? {}).sort()).toEqual([
      'bedroomsCounted',
      'inspectedOn',
      'people',
      'reference.b',
    ])
  })

  test('what was typed and is hidden by another outcome is neither sent nor a fault', () => {
    const { record, faults } = readForm(
      tank({ outcome: 'not-reached', notReachedBecause: 'buried', length: 'soon' }),
    )
    expect(faults).toEqual({})
    expect(record?.components[0]).toMatchObject({ outcome: 'not-reached', length: null })
  })
})
