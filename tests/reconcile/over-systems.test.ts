import fc from 'fast-check'
import { expect, test } from 'vitest'
import { SYSTEM_USES } from '../../src/catalog/choices.ts'
import { overSystems, STATUS_WORDS, type StatusWord, toldOf } from '../../src/reconcile/status.ts'
import { ownSystem, type System } from '../../src/records/system.ts'
import { statusWords } from '../../src/words/agent/status.ts'
import { LANGUAGES } from '../../src/words/language.ts'

const own = ownSystem({ id: 'p', number: '1' })
const another = (over: Partial<System> = {}): System => ({
  ...own,
  id: 's',
  use: 'cottage',
  label: 'pins 4411',
  revision: 1,
  ...over,
})
const standing = (system: System, word: StatusWord, inspected = true) => ({
  system,
  inspected,
  status: { word, items: [], waived: [] },
})

test('a parcel with its own system alone has that one’s status, and nothing more is said', () => {
  const only = standing(own, 'matches')
  expect(overSystems('p', [only])).toBe(only.status)
})

test('the first word that applies to any of them is the parcel’s, whatever their order', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...STATUS_WORDS), { minLength: 2, maxLength: 5 }), (words) => {
      const all = words.map((word, at) => standing(another({ id: `s${at}` }), word))
      const first = STATUS_WORDS.find((word) => words.includes(word))
      expect(overSystems('p', all).word).toBe(first)
      expect(overSystems('p', all.toReversed()).word).toBe(first)
    }),
  )
})

test.each(LANGUAGES)(
  'one that nobody inspected is named, and no label of the county’s is read, in %s',
  (language) => {
    const status = overSystems('p', [standing(own, 'matches'), standing(another(), 'not-inspected', false)])
    const told = statusWords(status, language)
    expect(told.systems.map(({ notes }) => notes.length)).toEqual([0, 1])
    expect(told.sentence.length).toBeGreaterThan(
      statusWords(standing(own, 'not-inspected').status, language).sentence.length,
    )
    expect(JSON.stringify(told)).not.toContain('4411')
  },
)

test('a shared one says so, and names no other parcel', () => {
  const on = { ...own.parcels[0]!, parcel: 'q', number: '99-9999' }
  const shared = another({ id: 'p', parcels: [...own.parcels, on] })
  const told = JSON.stringify(statusWords(overSystems('p', [standing(shared, 'matches')]), 'en'))
  expect(told).toContain('title company')
  expect(told).not.toContain('99-9999')
})

test('several of one use are told apart by their marks, else by their place', () => {
  const marks = (...labels: (string | null)[]) =>
    toldOf(labels.map((label, at) => another({ id: `s${at}`, label }))).map(({ mark }) => mark)
  expect(marks('unit A', 'unit B')).toEqual(['A', 'B'])
  expect(marks(null, 'the blue one')).toEqual(['1', '2'])
  expect(marks('field of lots 12 and 13')).toEqual([null])
  expect(toldOf(SYSTEM_USES.map((use) => another({ use }))).every(({ mark }) => mark === null)).toBe(true)
})
