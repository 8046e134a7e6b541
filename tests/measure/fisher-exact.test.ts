import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fisherExact, holmAdjusted } from '../../src/measure/fisher-exact.ts'
import published from '../oracles/fisher-exact/published.json' with { type: 'json' }

/** The same in whole numbers without rounding: every table of these margins counted. */
function counted(a: number, b: number, c: number, d: number): number {
  const choose = (n: number, k: number): bigint => {
    let ways = 1n
    for (let i = 1; i <= k; i++) ways = (ways * BigInt(n - k + i)) / BigInt(i)
    return ways
  }
  const [row, other, column] = [a + b, c + d, a + c]
  const ways = (k: number) => choose(row, k) * choose(other, column - k)
  let [rare, all] = [0n, 0n]
  for (let k = Math.max(0, column - other); k <= Math.min(row, column); k++) {
    all += ways(k)
    if (ways(k) <= ways(a)) rare += ways(k)
  }
  return Number((rare * 10n ** 18n) / all) / 1e18
}

describe('Fisher’s exact test', () => {
  test.each(published.cases)('as printed: $what', ({ table, twoSided }) => {
    const [a, b, c, d] = table as [number, number, number, number]
    const p = fisherExact(a, b, c, d)
    expect(Math.abs(p - twoSided)).toBeLessThanOrEqual(twoSided * published.tolerance.relative)
  })

  test('is what counting every table gives', () => {
    const count = fc.nat({ max: 40 })
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        expect(fisherExact(a, b, c, d)).toBeCloseTo(counted(a, b, c, d), 9)
      }),
    )
  })

  test('does not care which row or column is called the first', () => {
    const count = fc.nat({ max: 200 })
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        const p = fisherExact(a, b, c, d)
        for (const other of [fisherExact(c, d, a, b), fisherExact(b, a, d, c), fisherExact(a, c, b, d)])
          expect(other).toBeCloseTo(p, 9)
        expect(p).toBeGreaterThan(0)
        expect(p).toBeLessThanOrEqual(1)
      }),
    )
  })

  test('of an empty margin says nothing: 1', () => {
    expect([fisherExact(0, 0, 3, 4), fisherExact(0, 5, 0, 7)]).toEqual([1, 1])
  })

  test('holds for a county’s counts', () => {
    expect(fisherExact(400, 9600, 3600, 86_400)).toBeGreaterThan(0.9)
    expect(fisherExact(600, 9400, 3600, 86_400)).toBeLessThan(1e-10)
  })
})

describe('Holm’s adjustment', () => {
  // Worked by hand: 0.01 × 3, then 0.02 × 2, then 0.03 × 1 which may not fall below 0.04.
  test('by hand', () => expect(holmAdjusted([0.02, 0.01, 0.03])).toEqual([0.04, 0.03, 0.04]))
  test('never above 1, and nothing for nothing', () =>
    expect([holmAdjusted([0.9, 0.8]), holmAdjusted([])]).toEqual([[1, 1], []]))
})
