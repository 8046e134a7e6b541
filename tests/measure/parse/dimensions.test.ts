import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { parseDimensions } from '../../../src/measure/parse/dimensions.ts'

describe('two or three lengths', () => {
  test.each([
    [`8' x 4' x 4'`, [8, 4, 4]],
    [`8'-6" x 4'-0" x 4'`, [8.5, 4, 4]],
    ['8 x 4 x 4 ft', [8, 4, 4]],
    ['8×4×4 ft', [8, 4, 4]],
    ['96 by 48 by 48 in', [8, 4, 4]],
    ['96" X 48"', [8, 4]],
    ['60 x 108 x 72 in', [5, 9, 6]],
    [`100' x 3'`, [100, 3]],
  ])('%s', (text, ft) => {
    expect(must(parseDimensions(text)).map((length) => length.ft)).toEqual(
      ft.map((x) => expect.closeTo(x, 12)),
    )
  })
  test('each keeps what was written for it', () => {
    expect(must(parseDimensions('8 x 4 ft')).map(({ asWritten }) => asWritten)).toEqual(['8', '4 ft'])
  })
  test('bare numbers by the caller', () => {
    expect(must(parseDimensions('8 x 4 x 4', { bare: 'ft' })).map(({ ft }) => ft)).toEqual([8, 4, 4])
    expect(parseDimensions('8 x 4 x 4').ok).toBe(false)
  })
  test.each(['', '8 ft', '8 x 4 x 4 x 4 ft', '8 x x 4 ft', 'x', '8 ft x -4 ft', 'x'.repeat(200)])(
    '%j is refused',
    (text) => {
      expect(parseDimensions(text).ok).toBe(false)
    },
  )
})
