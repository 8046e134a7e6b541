import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { DIMENSION_RULES, plausibleDimensions } from '../../../src/geometry/volume/plausible-dimensions.ts'
import virginia from '../../oracles/virginia-12vac5-610-815/table-5-3.json' with { type: 'json' }

const by = (gal: number, name: string) =>
  must(plausibleDimensions(gal)).value.find(({ rule }) => rule.name === name)

describe(virginia.source, () => {
  test.each(virginia.cases)('$nominalGal gal', ({ nominalGal, length, width, depth }) => {
    expect(by(nominalGal, 'Virginia Table 5.3')).toMatchObject({
      lengthFt: { from: length, to: length },
      widthFt: { from: width, to: width },
      liquidDepthFt: { from: depth, to: depth },
    })
  })
  test('between two sizes: from the one to the other; outside: nothing', () => {
    expect(by(1000, 'Virginia Table 5.3')).toMatchObject({
      lengthFt: { from: 8, to: 9 },
      widthFt: { from: 4, to: 4.5 },
    })
    expect(by(1500, 'Virginia Table 5.3')).toBeUndefined()
    expect(by(500, 'Virginia Table 5.3')).toBeUndefined()
  })
  test('its ratio and its table disagree for 750 gal, and both stand', () => {
    const [ratio, table] = [by(750, 'Virginia ratio')!, by(750, 'Virginia Table 5.3')!]
    expect(ratio.widthFt.from).toBeLessThan(table.widthFt.from)
    // 7 × 3.5 × 4 holds 733 gal: no pair of the ratio's own dimensions at 4 ft is so short and so narrow.
    const gal = (table.lengthFt.from * table.widthFt.from * table.liquidDepthFt.from * 1728) / 231
    expect(gal).toBeLessThan(750)
  })
})

test('by ratio: the volume is the nominal one at both ends, in ratio and in depth', () => {
  fc.assert(
    fc.property(fc.double({ min: 300, max: 20_000, noNaN: true }), (gal) => {
      const it = by(gal, 'Virginia ratio')!
      const cuFt = (gal * 231) / 1728
      // Longest goes with narrowest and shallowest: 3:1; shortest with widest: 2:1.
      expect((it.lengthFt.to * it.widthFt.from * it.liquidDepthFt.from) / cuFt).toBeCloseTo(1, 9)
      expect((it.lengthFt.from * it.widthFt.to * it.liquidDepthFt.to) / cuFt).toBeCloseTo(1, 9)
      expect(it.lengthFt.to / it.widthFt.from).toBeCloseTo(3, 9)
      expect(it.lengthFt.from / it.widthFt.to).toBeCloseTo(2, 9)
      expect(it.liquidDepthFt.from).toBeGreaterThanOrEqual(4)
      expect(it.liquidDepthFt.to).toBeLessThanOrEqual(8)
    }),
  )
})

test('every rule has a source and its working, and a size that is none is refused', () => {
  for (const { source } of DIMENSION_RULES) expect(source.length).toBeGreaterThan(20)
  expect(must(plausibleDimensions(1000)).steps).toHaveLength(2)
  for (const gal of [0, -5, Number.NaN, Number.POSITIVE_INFINITY])
    expect(plausibleDimensions(gal).ok).toBe(false)
})
