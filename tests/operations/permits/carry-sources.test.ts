import { expect, test } from 'vitest'
import { carrySources } from '../../../src/operations/permits/carry-sources.ts'
import type { FiledPermit } from '../../../src/records/permit.ts'
import { sourceAt } from '../../../src/records/permit-claims.ts'
import type { Source } from '../../../src/records/source.ts'
import { permit1974, permitRecord } from '../../support/quillback.ts'

const read: Source = {
  kind: 'document',
  document: 'd1',
  page: 1,
  box: null,
  words: '1000 GAL',
  confidence: 0.9,
  confirmedBy: 'someone',
}
const typed: Source = { kind: 'typed', by: 'first', on: '2026-01-01' }
const fresh: Source = { kind: 'typed', by: 'second', on: '2026-02-02' }
const record = permitRecord(permit1974)
const old: FiledPermit = {
  id: 'p',
  revision: 1,
  record,
  sources: { '': typed, '/components/0/capacity': read },
}
const after = (changed: typeof record) => ({
  ...old,
  record: changed,
  sources: carrySources(old, changed, fresh),
})

test('what reads as before keeps its source, what changed comes from the correction', () => {
  const corrected = after({ ...record, bedrooms: 4 })
  expect(sourceAt(corrected, '/bedrooms')).toEqual(fresh)
  expect(sourceAt(corrected, '/approvedOn')).toEqual(typed)
  expect(sourceAt(corrected, '/components/0/capacity')).toEqual(read)
})

test('a component keeps its sources where another is put before it', () => {
  const [tank, ...others] = record.components
  const corrected = after({ ...record, components: [...others, tank!] })
  expect(sourceAt(corrected, '/components/2/capacity')).toEqual(read)
  expect(sourceAt(corrected, '/components/0/material')).toEqual(typed)
})

test('a component under another tag is another component', () => {
  const components = record.components.map((it) => ({ ...it, tag: `new ${it.tag}` }))
  expect(sourceAt(after({ ...record, components }), '/components/0/capacity')).toEqual(fresh)
})

test('a value that is taken out leaves no source behind', () => {
  const [tank, ...others] = record.components
  const corrected = after({ ...record, components: [{ ...tank!, capacity: null }, ...others] })
  expect(corrected.sources['/components/0/capacity']).toBeUndefined()
})
