import { chiSquaredDistributionTable } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import {
  chiSquare2Above,
  chiSquare2Quantile,
  chiSquareAbove,
  chiSquareQuantile,
} from '../../../src/geometry/position/chi-square.ts'

// Upper percentage points of chi-square with 2 degrees of freedom, as statistical tables print them (common practice).
test.each([
  [0.5, 1.386],
  [0.9, 4.605],
  [0.95, 5.991],
  [0.99, 9.21],
])('chi-square with 2 degrees of freedom, %f: %f', (p, printed) => {
  expect(chiSquare2Quantile(p)).toBeCloseTo(printed, 3)
  expect(chiSquare2Above(chiSquare2Quantile(p))).toBeCloseTo(1 - p, 12)
})

/** Rows of the library's printed table: degrees, then the value exceeded with each probability. */
const TABLE = chiSquaredDistributionTable as unknown as Record<string, Record<string, number>>

describe('for other degrees of freedom', () => {
  test.each([1, 2, 3, 4, 5, 6, 8, 12])('%i: as the table of a statistics library prints it', (degrees) => {
    const row = TABLE[String(degrees)]!
    // Printed to two decimals: at one degree of freedom that is 0.0024 of the probability.
    for (const above of [0.5, 0.1, 0.05, 0.01]) {
      expect(chiSquareQuantile(1 - above, degrees)).toBeCloseTo(row[String(above)]!, 1)
      expect(Math.abs(chiSquareAbove(row[String(above)]!, degrees) - above)).toBeLessThan(0.003)
    }
  })

  test('nothing lies above infinity, and all above zero', () => {
    expect(chiSquareAbove(Number.POSITIVE_INFINITY, 3)).toBe(0)
    expect(chiSquareAbove(0, 3)).toBe(1)
  })
})
