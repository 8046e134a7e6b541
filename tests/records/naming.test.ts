import { expect, test } from 'vitest'
import { isOrAre, itOrThem, the, wasOrWere } from '../../src/records/naming.ts'

test.each([
  ['tank', 'the tank'],
  ['D-box', 'the D-box'],
  ['septic tank', 'the septic tank'],
  ['tank 1', 'tank 1'],
  ['pit #2', 'pit #2'],
  ['pit B', 'pit B'],
  ['2', '2'],
  ['the old pit', 'the old pit'],
  ['theatre pit', 'the theatre pit'],
])('%s is %s in a sentence', (label, named) => expect(the(label)).toBe(named))

test.each([
  ['trench', 'is', 'was', 'it'],
  ['trenches', 'are', 'were', 'them'],
  ['pits', 'are', 'were', 'them'],
  ['glass tank', 'is', 'was', 'it'],
  ['glass', 'is', 'was', 'it'],
])('%s %s, %s, %s', (label, is, was, it) => {
  expect([isOrAre(label), wasOrWere(label), itOrThem(label)]).toEqual([is, was, it])
})
