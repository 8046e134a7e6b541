import { describe, expect, test } from 'vitest'
import { lastDay } from '../../src/base/partial-date.ts'
import { FOUND_FIELDS, MEASURE_NAMES, type MeasureName, SYSTEM_FIELDS } from '../../src/catalog/catalog.ts'
import { MEASURES } from '../../src/catalog/component-measures.ts'
import type { Field, Fields } from '../../src/catalog/field.ts'
import { asBuilt } from '../../src/http/api/shapes/as-built.ts'
import { findingsRecord } from '../../src/http/api/shapes/findings-record.ts'
import { permitRecord } from '../../src/http/api/shapes/permit-record.ts'
import { groupsFor } from '../../src/http/inspection/form/fields.ts'
import { PERMIT_FIELDS, partFields } from '../../src/http/pages/documents/fields.ts'
import { isTarget } from '../../src/operations/imports/kinds.ts'
import { CORRECTABLE } from '../../src/reading/entry/correction.ts'
import { findingsEntry } from '../../src/reading/entry/findings.ts'
import { asBuiltOn } from '../../src/records/fold.ts'
import { filed } from '../records/permits.ts'

/** One declaration is enough: every field is where it is declared to be, and nothing else had to be told of it. */

const inGroups = (name: string, field: Field): readonly string[] =>
  field.value === 'group'
    ? Object.keys(field.parts).map((part) => `${name}.${part}`)
    : field.value === 'rows'
      ? Object.keys(field.parts).map((part) => `${name}.0.${part}`)
      : [name]

/** A value that the field takes: its example, the first choice, a tie. */
function anyOf(field: Field): unknown {
  if (field.example !== undefined) return field.example
  if (field.value === 'choice') return field.choices[0]
  if (field.value === 'rows') return [{ from: '0 ft', to: '31 ft' }]
  return { a: '12 ft', b: '9 ft' }
}

describe.each(MEASURE_NAMES)('%s, a measure', (name: MeasureName) => {
  const field: Field = MEASURES[name]
  const value = anyOf(field)

  test('is typed from a permit, and the as-built has it from there', () => {
    const component = { tag: 'tank', kind: 'tank', [name]: value }
    const reference = { a: 'rear left', b: 'rear right' }
    const permit = filed('p', {
      number: '74-118',
      kind: 'new',
      approvedOn: '1974-06-20',
      reference,
      components: [component as never],
    })
    const [built] = asBuiltOn([permit], [], lastDay(permit.record.approvedOn!)).components
    expect(built!.measures[name]).toMatchObject({
      state: 'stated',
      value: permit.record.components[0]![name],
    })
  })

  test('is typed at an inspection, if that can say it', () => {
    const found = { label: 'tank', kind: 'tank', outcome: 'found', measuredFrom: 'tank', [name]: value }
    const entry = {
      inspectedOn: '2026-10-12',
      reference: { a: 'rear left', b: 'rear right' },
      components: [found],
    }
    const read = findingsEntry.safeParse(entry)
    if (field.by === 'permit') expect(read.success).toBe(false)
    else expect(read.data?.components[0]).toHaveProperty(name, expect.anything())
  })

  test('is corrected, imported, confirmed and answered', () => {
    expect(CORRECTABLE).toContain(name)
    for (const part of inGroups(name, field)) {
      expect(isTarget('permits', `components.tank.${part}`)).toBe(true)
      expect(isTarget('findings', `components.tank.${part}`)).toBe(field.by !== 'permit')
      expect(partFields(0).map((asked) => asked.name)).toContain(`/components/0/${part.replaceAll('.', '/')}`)
    }
    expect(Object.keys(permitRecord.shape.components.element.shape)).toContain(name)
    if (field.by !== 'permit')
      expect(Object.keys(findingsRecord.shape.components.element.shape)).toContain(name)
    expect(Object.keys(asBuilt.shape.components.element.shape.measures.shape)).toContain(name)
  })
})

test.each(Object.entries(FOUND_FIELDS as Fields).filter(([, { section }]) => section !== undefined))(
  '%s is asked for by the form of the kinds that have it, and of no other',
  (name, { on = [] }) => {
    for (const { kinds } of on)
      for (const kind of kinds)
        expect(groupsFor(kind).flatMap(({ fields }) => fields.map((it) => it.name))).toContain(name)
    const wells = groupsFor('well').flatMap(({ fields }) => fields.map((it) => it.name))
    expect(wells.includes(name)).toBe(on.some(({ kinds }) => kinds.includes('well')))
  },
)

test.each(SYSTEM_FIELDS)('%s, of the system, is corrected, imported, confirmed and answered', (name) => {
  expect(CORRECTABLE).toContain(name)
  expect(isTarget('permits', name)).toBe(true)
  expect(PERMIT_FIELDS.map((asked) => asked.name)).toContain(`/${name}`)
  expect(Object.keys(asBuilt.shape)).toContain(name)
})
