import { describe, expect, test } from 'vitest'
import {
  CATALOG,
  FOUND_FIELDS,
  MEASURE_NAMES,
  STATED_FIELDS,
  SYSTEM_FIELDS,
} from '../../src/catalog/catalog.ts'
import type { Bounds, Field, Fields } from '../../src/catalog/field.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import { choiceWords } from '../../src/words/field-choices.ts'

/** Every field and every part of one, by its place. */
const leaves = (fields: Fields, at: string): readonly (readonly [string, Field])[] =>
  Object.entries(fields).flatMap(([name, field]) => [
    [`${at}.${name}`, field] as const,
    ...('parts' in field ? leaves(field.parts, `${at}.${name}`) : []),
  ])
const all = Object.entries(CATALOG).flatMap(([place, fields]) => leaves(fields, place))

const isWithin = ([least, most]: Bounds, [from, to]: Bounds): boolean =>
  from <= least && least < most && most <= to

describe('the catalog', () => {
  test.each(all)('%s: what is plausible is possible, of every kind', (_, field) => {
    if (!('possible' in field)) return
    for (const plausible of [field.plausible, ...(field.on ?? []).map((use) => use.plausible)])
      if (plausible) expect(isWithin(plausible, field.possible)).toBe(true)
  })

  test.each(all)('%s: what is usual is a choice, and every choice is called something', (_, field) => {
    if (field.value !== 'choice' && field.value !== 'choices') return
    const choices = field.choices.map(String)
    for (const { usual = [] } of field.on ?? []) expect(choices).toEqual(expect.arrayContaining([...usual]))
    if (typeof field.choices[0] === 'number') return
    for (const choice of choices) expect(choiceWords(field.choices, choice)).toMatch(/^[A-Z]/)
  })

  test('no heading of a file means two fields of one place', () => {
    for (const fields of Object.values(CATALOG) as readonly Fields[]) {
      const meant = new Map<string, string>()
      for (const [name, { aliases = [] }] of Object.entries(fields))
        for (const heading of [name, ...aliases]) {
          const plain = heading.toLowerCase().replaceAll(' ', '')
          expect([undefined, name], heading).toContain(meant.get(plain))
          meant.set(plain, name)
        }
    }
  })

  test('each kind of component stands once in a field', () => {
    for (const [name, { on = [] }] of all) {
      const kinds = on.flatMap((use) => use.kinds)
      expect(
        kinds.filter((kind, index) => kinds.indexOf(kind) !== index),
        name,
      ).toEqual([])
    }
  })

  test('what a permit says and the as-built carries is entered by a permit', () => {
    for (const name of MEASURE_NAMES) expect(Object.keys(STATED_FIELDS)).toContain(name)
    expect(SYSTEM_FIELDS).toEqual(['bedrooms', 'designFlowGpd', 'percRateMpi', 'soilTexture'])
  })

  test('an example of a field is read as that field', () => {
    const tank = { tag: 'tank', label: 'tank', kind: 'tank', outcome: 'found' }
    for (const [schema, fields, named] of [
      [permitEntry, STATED_FIELDS, ['tag', 'kind']],
      [findingsEntry, FOUND_FIELDS, ['label', 'kind', 'outcome']],
    ] as const) {
      const own = Object.fromEntries(named.map((name) => [name, tank[name]]))
      for (const [name, { example }] of Object.entries(fields as Fields)) {
        if (example === undefined) continue
        const entry = {
          number: '1',
          kind: 'new',
          inspectedOn: '2026-01-01',
          components: [{ ...own, [name]: example }],
        }
        const top =
          schema === permitEntry ? { inspectedOn: undefined } : { number: undefined, kind: undefined }
        const given = Object.fromEntries(
          Object.entries({ ...entry, ...top }).filter(([, it]) => it !== undefined),
        )
        expect(schema.safeParse(given).error?.issues ?? [], name).toEqual([])
      }
    }
  })
})
