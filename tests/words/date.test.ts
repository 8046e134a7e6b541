import { expect, test } from 'vitest'
import { printDate, printTime } from '../../src/words/date.ts'

test('a day has one form in each language', () => {
  expect(printDate('2026-11-30', 'en')).toBe('Nov 30, 2026')
  expect(printDate('2026-11-30', 'es')).toBe('30 nov 2026')
  expect(printDate('1974-05-03', 'en')).toBe('May 3, 1974')
})

test.each([
  [14, 43, '2:43 p.m.', '2:43 p.\u00A0m.'],
  [9, 5, '9:05 a.m.', '9:05 a.\u00A0m.'],
  [0, 0, '12:00 a.m.', '12:00 a.\u00A0m.'],
  [12, 0, '12:00 p.m.', '12:00 p.\u00A0m.'],
])('a time has one form in each language: %i:%i', (hour, minute, en, es) => {
  expect(printTime(hour, minute, 'en')).toBe(en)
  expect(printTime(hour, minute, 'es')).toBe(es)
})
