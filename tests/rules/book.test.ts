import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, compareDates } from '../../src/base/plain-date.ts'
import { ruleBook } from '../../src/rules/book.ts'
import { canonicalText } from '../../src/rules/canonical.ts'
import { inForce } from '../../src/rules/in-force.ts'
import { JURISDICTION_KINDS } from '../../src/rules/pack.ts'
import { PARAMETER_NAMES } from '../../src/rules/parameters.ts'
import { day } from './day.ts'
import { SHIPPED } from './shipped-book.ts'

const anyPlace = fc.constantFrom(...SHIPPED.places.keys(), 'nowhere')
const anyName = fc.constantFrom(...PARAMETER_NAMES)
const anyDay = fc.integer({ min: 0, max: 200 * 365 }).map((days) => addDays(day('1850-01-01'), days))

test('a lookup answers for every place, parameter and day, and its answer fits the day', () => {
  fc.assert(
    fc.property(anyPlace, anyName, anyDay, (place, name, date) => {
      const answer = inForce(SHIPPED, place, name, date)
      switch (answer.state) {
        case 'in-force':
          expect(answer.citations.length).toBeGreaterThan(0)
          return
        case 'not-yet':
          expect(compareDates(date, answer.from)).toBeLessThan(0)
          expect(inForce(SHIPPED, place, name, answer.from).state).toBe('in-force')
          return
        case 'ended':
          expect(compareDates(date, answer.until)).toBeGreaterThanOrEqual(0)
          expect(inForce(SHIPPED, place, name, addDays(answer.until, -1)).state).toBe('in-force')
          return
        case 'no-record':
          expect(answer.why).toBe(place === 'nowhere' ? 'place-unknown' : 'parameter-absent')
      }
    }),
    { numRuns: 1000 },
  )
})

test('whoever wins is at least as near as all that gave way, and none of them is the winner', () => {
  fc.assert(
    fc.property(anyPlace, anyName, anyDay, (place, name, date) => {
      const answer = inForce(SHIPPED, place, name, date)
      fc.pre(answer.state === 'in-force')
      const nearness = JURISDICTION_KINDS.indexOf(answer.kind)
      for (const it of answer.overridden) {
        expect(JURISDICTION_KINDS.indexOf(it.kind)).toBeGreaterThanOrEqual(nearness)
        expect(it.pack).not.toBe(answer.pack)
      }
    }),
  )
})

test('the same packs in another order are the same book', () => {
  const packs = [...SHIPPED.packs.values()]
  const text = canonicalText(SHIPPED)
  fc.assert(
    fc.property(
      fc.shuffledSubarray(packs, { minLength: packs.length }),
      anyPlace,
      anyName,
      anyDay,
      (order, place, name, date) => {
        const book = ruleBook(order)
        expect(canonicalText(book)).toBe(text)
        expect(inForce(book, place, name, date)).toEqual(inForce(SHIPPED, place, name, date))
      },
    ),
    { numRuns: 30 },
  )
})

test('another rule is another text', () => {
  const [first, ...rest] = SHIPPED.packs.values()
  const changed = ruleBook([{ ...first!, title: `${first!.title}.` }, ...rest])
  expect(canonicalText(changed)).not.toBe(canonicalText(SHIPPED))
})

test('a place’s text changes with the packs in its reach and with no others', () => {
  const edited = (id: string) =>
    ruleBook(
      [...SHIPPED.packs.values()].map((pack) => (pack.pack === id ? { ...pack, title: 'Edited' } : pack)),
    )
  const before = canonicalText(SHIPPED, 'quillback')
  expect(canonicalText(edited('ohio/tanks'), 'quillback')).toBe(before)
  expect(canonicalText(edited('winnow/code'), 'quillback')).not.toBe(before)
  expect(canonicalText(edited('ipsdc/tanks'), 'quillback')).not.toBe(before)
  expect(canonicalText(SHIPPED, 'nowhere')).toBe('[]')
})
