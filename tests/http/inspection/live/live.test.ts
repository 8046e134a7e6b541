import { expect, test } from 'vitest'
import { must } from '../../../../src/base/result.ts'
import { loadRuleBook } from '../../../../src/files/rule-packs.ts'
import { readForm } from '../../../../src/http/inspection/form/read.ts'
import { readableRecord } from '../../../../src/http/inspection/form/readable.ts'
import {
  EMPTY_FORM,
  type InspectionForm,
  type Typed,
  withPart,
} from '../../../../src/http/inspection/form/typed.ts'
import { liveOf } from '../../../../src/http/inspection/live/live-of.ts'
import { NOTHING_YET } from '../../../../src/http/inspection/live/nothing-yet.ts'
import { day, permit1974, permitRecord } from '../../../support/quillback.ts'

const book = must(await loadRuleBook())
const asOf = day('2026-10-12')
const given = {
  county: 'quillback',
  asOf,
  permits: [
    {
      id: 'p',
      revision: 1,
      record: permitRecord(permit1974),
      sources: { '': { kind: 'typed' as const, by: 'clerk', on: asOf } },
    },
  ],
  corrections: [],
  book,
  findings: 'draft',
  firm: 'firm',
}
const tank = {
  id: 'tank',
  key: 'p/tank',
  kind: 'tank',
  label: 'tank',
  onRecord: {},
  where: [],
  usual: [],
} as const
const wanted = [
  {
    key: 'p/tank',
    field: 'liquidDepth',
    what: 'tank: liquid depth',
    how: 'a rod',
    settles: ['Does it hold it?'],
  },
  { key: 'p/tank', field: 'tie', what: 'ties of tank', how: 'a tape', settles: ['Is it there?'] },
  {
    key: null,
    field: 'bedroomsCounted',
    what: 'count the bedrooms',
    how: 'in the house',
    settles: ['Are there more?'],
  },
]
const sheet = { parts: [tank], wanted }
const form = (typed: Typed, start: Typed = {}): InspectionForm =>
  withPart(
    { ...EMPTY_FORM, start: { inspectedOn: '2026-10-12', ...start } },
    { ...tank, typed: { outcome: 'found', ...typed } },
  )
const live = (it: InspectionForm, step = 'tank') =>
  liveOf(sheet, it, step, readableRecord(it, readForm(it)), given)

/** A box of 8 ft by 4 ft with 4 ft of liquid: 128 cu ft × 7.48052 = 957.5 gal, by hand. */
const BOX = { shape: 'rectangular', length: '8\'-0"', width: '4\'-0"', liquidDepth: '4\'-0"' }

test('the size shows with its uncertainty as soon as the three sides are there', () => {
  expect(live(form({ ...BOX, liquidDepth: '' })).live.holds).toBeNull()
  expect(live(form(BOX)).live.holds).toMatch(/^95\d ± \d\d gal$/)
  expect(live(form(BOX)).holds).toEqual({ tank: live(form(BOX)).live.holds })
})

test('a number half typed takes away nothing but itself', () => {
  const half = live(form({ ...BOX, width: '4', scumThickness: '3' }))
  expect(half.live.holds).toBeNull()
  expect(live(form({ ...BOX, scumThickness: '3' })).live.holds).toMatch(/gal$/)
})

test('a tank smaller than its record is a difference, told to the firm; one that agrees is told to agree', () => {
  const small = live(form({ ...BOX, length: '6\'-0"' }))
  expect(small.live.differences.map(({ says }) => says)[0]).toMatch(
    /holds 718 ± \d+ gal; the record says 1,000 gal/,
  )
  expect(live(form(BOX)).live.agrees.join()).toMatch(/holds 95\d ± \d\d gal/)
})

test('too rough to tell: the one measurement to take again is asked for before anything else', () => {
  const rough = live(
    form({ ...BOX, 'length.how': 'by-eye', 'width.how': 'by-eye', 'liquidDepth.how': 'by-eye' }),
  )
  expect(rough.live.again?.what).toMatch(/again/)
  expect(rough.live.again?.why).toMatch(/of the variance/)
  const large = { ...BOX, length: '8\'-8"', 'liquidDepth.how': 'liquid-level-rule' }
  expect(live(form(large)).live.again).toBeNull()
})

test('what would decide most and is not there yet is asked for while it is open, one at a time', () => {
  expect(live(form({})).live.next?.what).toBe('tank: liquid depth')
  expect(live(form({ liquidDepth: '4 ft' })).live.next?.what).toBe('ties of tank')
  const corners = { 'reference.a': 'left', 'reference.b': 'right' }
  expect(live(form({ liquidDepth: '4 ft', 'tie.a': '9 ft', 'tie.b': '8 ft' }, corners)).live.next).toBeNull()
})

test('the whole system: bedrooms against the design, and what is still to be counted', () => {
  expect(live(form({}), 'start').live.next?.what).toBe('count the bedrooms')
  const five = live(form({}, { bedroomsCounted: '5' }), 'start').live
  expect(five.next).toBeNull()
  expect(five.differences.map(({ says }) => says).join()).toMatch(/5 .*bedrooms|bedrooms.*5/i)
})

test('with nothing that can be read there is nothing to say', () => {
  expect(live({ ...form(BOX), start: { inspectedOn: 'soon' } }).live).toEqual(NOTHING_YET)
})
