import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FOUND_FIELDS } from '../../../../src/catalog/catalog.ts'
import { NOT_REACHED_REASONS, SEARCH_METHODS } from '../../../../src/catalog/choices.ts'
import type { Field, Fields } from '../../../../src/catalog/field.ts'
import { INSPECTION_FIELDS } from '../../../../src/catalog/inspection-fields.ts'
import { COMPONENT_KINDS } from '../../../../src/catalog/kinds.ts'
import { presentFindingsRecord } from '../../../../src/http/api/shapes/findings-record.ts'
import { formOf } from '../../../../src/http/inspection/form/from-record.ts'
import { readForm } from '../../../../src/http/inspection/form/read.ts'
import { EMPTY_FORM, type InspectionForm, type PartForm } from '../../../../src/http/inspection/form/typed.ts'
import { METHOD_NAMES } from '../../../../src/measure/methods.ts'
import { type FindingsEntry, findingsEntry } from '../../../../src/reading/entry/findings.ts'
import { numberTyped } from '../../../../src/reading/entry/marked.ts'
import { formFaultWords } from '../../../../src/words/form-faults.ts'

const one = <T>(list: readonly T[]) => fc.constantFrom(...list)
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined, freq: 2 })
/** Lengths in the ways people write them, with what they are in feet. */
const WRITTEN: readonly (readonly [string, number])[] = [
  ['4\'-6"', 4.5],
  ['54 in', 4.5],
  ['4.5 ft', 4.5],
  ['1.37 m', 4.5],
  ["8'", 8],
  ['about 8 ft', 8],
  ['23\'-6 1/2"', 24],
  ['106.2 ft', 106.2],
  ['4 ft 6 in', 4.5],
]
const lengthUpTo = (most: number) => {
  const written = one(WRITTEN.filter(([, ft]) => ft <= most).map(([text]) => `${text}, checked`))
  return fc.oneof(
    written,
    fc.record({
      length: written,
      method: one(METHOD_NAMES),
      instrument: maybe(one(['the new tape', 'rod 2'])),
    }),
    fc.record({ ft: one([4.5, 8, 0.25]), checked: fc.constant(true as const) }),
    fc.record({ in: one([54, 7.5]), checked: fc.constant(true as const) }),
  )
}
const level = fc.oneof(
  fc.record({ above: one(['2 in', '0 in', '0.0 ft']) }),
  fc.record({ below: one(['5 in, checked', '1\'-1", checked']), method: one(METHOD_NAMES) }),
)

/** Anything that a field takes, as people type it: made from the catalog, so that a new field is tried too. */
function typed(field: Field): fc.Arbitrary<unknown> {
  switch (field.value) {
    case 'length':
      return lengthUpTo(field.possible[1])
    case 'level':
      return level
    case 'volume':
      return one(['1,000 gal', '3785 L'])
    case 'whole':
      return fc
        .integer({ min: field.possible[0], max: field.possible[1] })
        .map((value) => (value % 2 === 0 ? `${value}, checked` : numberTyped(field, value)))
    case 'number':
      return one(
        [41.5, -0.25, 16, 9.84]
          .filter((it) => it >= field.possible[0] && it < field.possible[1])
          .map((it) => numberTyped(field, it)),
      )
    case 'date':
      return one(['2026-10-12', '10/12/26'])
    case 'partial-date':
      return one(['2026-10-12', '9/77', '1977'])
    case 'flag':
      return fc.boolean()
    case 'line':
      return one(['rear of house', 'rear left corner'])
    case 'prose':
      return one(['Cracked across.\nWet.'])
    case 'lines':
      return fc.constant(['tank 1'])
    case 'choice':
      return one(field.choices)
    case 'choices':
      return fc.subarray([...field.choices])
    case 'group':
      return entryOf(field.parts)
    case 'rows':
      return fc
        .array(entryOf(field.parts), { minLength: 1, maxLength: 3 })
        .map((rows) => rows.map((row, at) => ({ ...row, ...alongside(at, 'from' in field.parts) })))
  }
}
/** Rows lie one after another, none over the next. */
const alongside = (row: number, isStretch: boolean) =>
  isStretch
    ? { from: `${10 * row} ft`, to: `${10 * row + 9} ft` }
    : { at: `${10 * row} ft`, to: `${10 * row + 9} ft` }
const entryOf = (fields: Fields) =>
  fc.record(
    Object.fromEntries(
      Object.entries(fields).map(([name, field]) => [
        name,
        field.needed ? typed(field) : maybe(typed(field)),
      ]),
    ),
  )
const { key: _, label: __, kind: ___, outcome: ____, notReachedBecause: _____, ...OF_FOUND } = FOUND_FIELDS
const length = lengthUpTo(200)
const found = fc
  .tuple(entryOf(OF_FOUND), fc.constant({ outcome: 'found' as const }))
  .map(([it, outcome]) => ({ ...it, ...outcome, length: undefined, measuredFrom: 'cleanout' }))
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
/** What was found lies on the lot of its house: a fix a mile from the corner's is refused. */
function onOneLot(entry: FindingsEntry): FindingsEntry {
  const { cornerA, components = [] } = entry
  return cornerA
    ? {
        ...entry,
        components: components.map((it) =>
          it.fix ? { ...it, fix: { ...it.fix, lat: cornerA.lat, lon: cornerA.lon } } : it,
        ),
      }
    : entry
}

const inspection = fc
  .tuple(entryOf(INSPECTION_FIELDS), typed(INSPECTION_FIELDS.reference), components)
  .map(([it, reference, list]) => onOneLot({ ...it, reference, components: list } as FindingsEntry))

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

/** A meter is 1/0.3048 ft one way and 0.3048⁻¹ the other: they differ in the last digit that a computer keeps. */
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
    ['a count that is none', { outcome: 'found', compartments: 'some' }, 'compartments', /number/],
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
    expect(formFaultWords(faults.tank![field]!)).toMatch(says)
  })

  test('an odd value is asked about, and a tick for that very value is its answer', () => {
    const odd = { outcome: 'found', length: '84 ft' }
    expect(faultsOf(tank(odd)).tank!.length).toEqual({
      why: 'unusual',
      asks: '84 ft? Did you mean 84 in?',
      written: '84 ft',
    })
    const { record, faults } = readForm(tank({ ...odd, 'length.checked': '84 ft' }))
    expect(faults).toEqual({})
    expect(record!.components[0]!.length).toMatchObject({ ft: 84, asWritten: '84 ft, checked' })
    // Another value than the one that was ticked is asked about again.
    expect(faultsOf(tank({ ...odd, length: '94 ft', 'length.checked': '84 ft' })).tank!.length).toMatchObject(
      {
        why: 'unusual',
        written: '94 ft',
      },
    )
    expect(formOf(record!, []).parts[0]!.typed).toMatchObject({ length: '84 ft', 'length.checked': '84 ft' })
  })

  test('the day of the inspection and what is asked once', () => {
    const start = { inspectedOn: '', people: 'some', bedroomsCounted: '-1', 'reference.a': 'porch corner' }
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
