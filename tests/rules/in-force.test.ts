import { expect, test } from 'vitest'
import type { PlainDate } from '../../src/base/plain-date.ts'
import { ruleBook } from '../../src/rules/book.ts'
import type { Citation } from '../../src/rules/citation.ts'
import { inForce } from '../../src/rules/in-force.ts'
import type { Entry, Pack } from '../../src/rules/pack.ts'

const day = (text: string) => text as PlainDate

const cited: Citation = {
  authority: 'Board of Health',
  document: 'Code',
  edition: null,
  section: '1',
  covers: null,
  words: null,
  readAt: 'https://example.org/code',
  verified: 'read',
}

const pct = (
  amount: number,
  from: string | null,
  until: string | null,
): Entry<{ amount: number; unit: 'pct' }> => ({
  from: from === null ? null : day(from),
  until: until === null ? null : day(until),
  value: { amount, unit: 'pct' },
  citations: [cited],
  note: null,
  contradictions: [],
})

const pack = (id: string, kind: Pack['jurisdiction']['kind'], rest: Partial<Pack>): Pack => ({
  pack: id,
  jurisdiction: { kind, name: id },
  title: id,
  invented: true,
  extends: [],
  adoption: [],
  parameters: [],
  ...rest,
})

const tolerance = (...entries: ReturnType<typeof pct>[]) => ({
  name: 'tank.nominal-tolerance-pct' as const,
  governedBy: 'inspected' as const,
  entries: entries as [ReturnType<typeof pct>, ...ReturnType<typeof pct>[]],
})

const book = ruleBook([
  pack('alder/code', 'county', {
    extends: ['practice/tolerances'],
    adoption: [
      { from: null, until: day('1967-01-01'), packs: [], note: 'no county code' },
      { from: day('1967-01-01'), until: day('1986-01-01'), packs: ['model/old'], note: 'model code adopted' },
    ],
    parameters: [tolerance(pct(3, '2004-01-01', '2015-01-01'), pct(4, '2020-01-01', null))],
  }),
  pack('model/old', 'model-code', { parameters: [tolerance(pct(10, null, null))] }),
  pack('practice/tolerances', 'practice', { parameters: [tolerance(pct(5, '1960-01-01', null))] }),
  pack('birch/code', 'county', {
    parameters: [tolerance(pct(3, '2004-01-01', '2015-01-01'), pct(4, '2020-01-01', null))],
  }),
])

const ask = (place: string, date: string) => inForce(book, place, 'tank.nominal-tolerance-pct', day(date))

test('the nearest layer that holds on the day wins, and says over what', () => {
  expect(ask('alder', '2004-01-01')).toMatchObject({
    state: 'in-force',
    value: { amount: 3, unit: 'pct' },
    pack: 'alder/code',
    overridden: [{ pack: 'practice/tolerances', value: { amount: 5, unit: 'pct' } }],
  })
  expect(ask('alder', '2003-12-31')).toMatchObject({
    value: { amount: 5 },
    pack: 'practice/tolerances',
    overridden: [],
  })
})

test('an adopted pack holds only from its adoption until its repeal', () => {
  expect(ask('alder', '1966-12-31')).toMatchObject({ value: { amount: 5 } })
  expect(ask('alder', '1967-01-01')).toMatchObject({ value: { amount: 10 }, pack: 'model/old' })
  expect(ask('alder', '1985-12-31')).toMatchObject({ value: { amount: 10 } })
  expect(ask('alder', '1986-01-01')).toMatchObject({ value: { amount: 5 } })
})

test('before the first entry, between two and after the last are three different answers', () => {
  expect(ask('alder', '1959-12-31')).toEqual({
    state: 'not-yet',
    from: '1960-01-01',
    pack: 'practice/tolerances',
  })
  expect(ask('birch', '1999-01-01')).toEqual({ state: 'not-yet', from: '2004-01-01', pack: 'birch/code' })
  expect(ask('birch', '2015-01-01')).toMatchObject({
    state: 'ended',
    until: '2015-01-01',
    resumes: '2020-01-01',
  })
  expect(ask('birch', '2014-12-31')).toMatchObject({ state: 'in-force', value: { amount: 3 } })
})

test('silence says whether the place or the parameter is missing', () => {
  expect(ask('nowhere', '2000-01-01')).toEqual({ state: 'no-record', why: 'place-unknown' })
  expect(inForce(book, 'birch', 'setbacks', day('2000-01-01'))).toEqual({
    state: 'no-record',
    why: 'parameter-absent',
  })
})
