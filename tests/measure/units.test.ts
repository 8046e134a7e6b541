import { unit } from 'mathjs'
import { expect, test } from 'vitest'
import {
  CU_IN_PER_GAL,
  cuFtToGal,
  ftToInches,
  GAL_PER_CU_FT,
  galToCuFt,
  inchesToFt,
  L_PER_GAL,
  M_PER_FT,
  SQ_FT_PER_ACRE,
  TRADE_GAL_PER_CU_FT,
} from '../../src/measure/units.ts'
import oracle from '../oracles/nist-handbook-44/gallon.json' with { type: 'json' }

test(oracle.source, () => {
  expect(CU_IN_PER_GAL).toBe(oracle.cuInPerGal.value)
  expect(Math.abs(GAL_PER_CU_FT - oracle.galPerCuFt.value)).toBeLessThanOrEqual(oracle.galPerCuFt.tolerance)
  const cuDm = GAL_PER_CU_FT * L_PER_GAL
  expect(Math.abs(cuDm - oracle.cuDmPerCuFt.value)).toBeLessThanOrEqual(oracle.cuDmPerCuFt.tolerance)
})

test(`the trade's round figure: ${oracle.trade.source}`, () => {
  expect(TRADE_GAL_PER_CU_FT).toBe(oracle.trade.value)
  const high = (TRADE_GAL_PER_CU_FT / GAL_PER_CU_FT - 1) * 100
  expect(Math.abs(high - oracle.trade.percentHigh.value)).toBeLessThanOrEqual(
    oracle.trade.percentHigh.tolerance,
  )
})

test('every factor is a general-purpose unit library’s', () => {
  const of = (from: string, to: string): number => unit(1, from).toNumber(to)
  // Relative: the library's own gallon and acre are rounded in their last digits.
  const close = (ours: number, theirs: number, within: number) =>
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(within)
  close(GAL_PER_CU_FT, of('cuft', 'gal'), 1e-6)
  close(L_PER_GAL, of('gal', 'L'), 1e-6)
  close(M_PER_FT, of('ft', 'm'), 1e-12)
  close(SQ_FT_PER_ACRE, of('acre', 'sqft'), 1e-5)
  close(ftToInches(1), of('ft', 'in'), 1e-12)
})

test('there and back', () => {
  expect(cuFtToGal(1)).toBe(1728 / 231)
  expect(galToCuFt(cuFtToGal(128))).toBeCloseTo(128, 12)
  expect(inchesToFt(ftToInches(4.5))).toBe(4.5)
})
