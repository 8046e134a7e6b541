import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { absorptionArea } from '../../../src/geometry/absorption/absorption-area.ts'
import {
  type AbsorptionShape,
  COUNTED_SURFACES,
  type CountedSurface,
} from '../../../src/geometry/absorption/absorption-shape.ts'
import { measuredLength } from '../../../src/measure/measured-length.ts'
import { exact, standardUncertainty, type Uncertain } from '../../../src/measure/uncertain.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'
import examples from '../../oracles/absorption-examples/published.json' with { type: 'json' }
import epa from '../../oracles/epa-625-1-80-012/table-7-6.json' with { type: 'json' }

const area = (shape: AbsorptionShape, counts: CountedSurface): number =>
  must(absorptionArea(shape, counts)).value.value
const pit = (d: number, h: number, count = 1): AbsorptionShape => ({
  kind: 'pits',
  diameter: exact(d),
  effectiveDepth: exact(h),
  count,
})

describe(epa.source, () => {
  for (const row of epa.rows)
    test.each(row.sqFt.map((sqFt, i) => [i + 1, sqFt] as const).filter(([, sqFt]) => sqFt !== null))(
      `${row.what}: at %s ft, %s sq ft`,
      (ft, sqFt) => {
        const ours = area(pit(row.diameter ?? ft, row.thickness ?? ft), 'sidewall')
        expect(Math.abs(ours - sqFt!)).toBeLessThanOrEqual(row.tolerance)
      },
    )
  test(epa.note.text, () => {
    const { diameter, depths, parts, sqFt, tolerance, partTolerance } = epa.note
    for (const [i, depth] of depths.entries())
      expect(Math.abs(area(pit(diameter, depth), 'sidewall') - parts[i]!)).toBeLessThanOrEqual(partTolerance)
    const whole = area(pit(diameter, depths[0]! + depths[1]!), 'sidewall')
    expect(Math.abs(whole - sqFt)).toBeLessThanOrEqual(tolerance)
  })
})

test(examples.trench.source, () => {
  const { sqFt, widthFt, lengthFt } = examples.trench
  const trench: AbsorptionShape = { kind: 'trenches', width: exact(widthFt), lengths: [exact(lengthFt)] }
  expect(area(trench, 'bottom')).toBe(sqFt)
})

test(examples.bed.source, () => {
  const { sqFt, widthFt, lengthFt } = examples.bed
  expect(area({ kind: 'bed', width: exact(widthFt), length: exact(lengthFt) }, 'bottom')).toBe(sqFt)
})

describe('by hand', () => {
  test('Texas, 30 TAC 285.91: the bottom and 1 ft of sidewall all round', () => {
    // One trench 50 × 3 ft: 150 + 2·(50 + 3)·1 = 256. Two: twice that.
    const one: AbsorptionShape = { kind: 'trenches', width: exact(3), lengths: [exact(50)] }
    expect(area(one, 'bottom-and-one-foot-of-sidewall')).toBe(256)
    expect(area({ ...one, lengths: [exact(50), exact(50)] }, 'bottom-and-one-foot-of-sidewall')).toBe(512)
    // A bed 30 × 20 ft: 600 + 2·50 = 700.
    expect(
      area({ kind: 'bed', length: exact(30), width: exact(20) }, 'bottom-and-one-foot-of-sidewall'),
    ).toBe(700)
  })
  test('trench sidewall is its two long sides', () => {
    const trench: AbsorptionShape = {
      kind: 'trenches',
      width: exact(3),
      lengths: [exact(40), exact(60)],
      effectiveDepth: exact(1.5),
    }
    expect(area(trench, 'sidewall')).toBe(300)
    expect(area(trench, 'bottom-and-sidewall')).toBe(600)
  })
  test('chambers: nominal width, with the credit of their approval', () => {
    const rows: AbsorptionShape = { kind: 'chambers', width: exact(3), lengths: [exact(50)], credit: 1 }
    expect(area(rows, 'bottom')).toBe(150)
    expect(area({ ...rows, credit: 1.33 }, 'bottom')).toBeCloseTo(199.5, 9)
  })
  test('a mound by its basal area', () => {
    expect(area({ kind: 'mound', basalLength: exact(80), basalWidth: exact(25) }, 'bottom')).toBe(2000)
  })
  test('three pits are three times one', () => {
    expect(area(pit(6, 8, 3), 'sidewall')).toBeCloseTo(3 * Math.PI * 48, 9)
    expect(area(pit(6, 8, 3), 'bottom')).toBeCloseTo(3 * Math.PI * 9, 9)
  })
})

const taped = (ft: number, name: string): Uncertain => measuredLength(ft, 'inside-tape', 'tape', name)
const side = fc.double({ min: 2, max: 40, noNaN: true })

/** A shape and the same area written out again from its values, for each surface. */
type Case = {
  readonly shape: AbsorptionShape
  readonly again: (v: readonly number[], s: CountedSurface) => number
  readonly inputs: readonly Uncertain[]
}
const SHAPES: { readonly [name: string]: fc.Arbitrary<Case> } = {
  pits: fc.tuple(side, side, fc.integer({ min: 1, max: 4 })).map(([a, b, count]) => {
    const inputs = [taped(a, 'd'), taped(b, 'h')]
    return {
      inputs,
      shape: { kind: 'pits', diameter: inputs[0]!, effectiveDepth: inputs[1]!, count },
      again: ([d = 0, h = 0], s) => count * (bottom(s) * Math.PI * (d / 2) ** 2 + wall(s, h) * Math.PI * d),
    }
  }),
  trenches: fc.tuple(side, side, side, side).map(([w, p, q, h]) => {
    const inputs = [taped(w, 'w'), taped(p, 'p'), taped(q, 'q'), taped(h, 'h')]
    return {
      inputs,
      shape: {
        kind: 'trenches',
        width: inputs[0]!,
        lengths: [inputs[1]!, inputs[2]!],
        effectiveDepth: inputs[3]!,
      },
      again: ([width = 0, one = 0, two = 0, depth = 0], s) =>
        bottom(s) * width * (one + two) +
        wall(s, depth) * (2 * (one + two) + (s === 'bottom-and-one-foot-of-sidewall' ? 4 * width : 0)),
    }
  }),
  bed: fc.tuple(side, side, side).map(([l, w, h]) => {
    const inputs = [taped(l, 'l'), taped(w, 'w'), taped(h, 'h')]
    return {
      inputs,
      shape: { kind: 'bed', length: inputs[0]!, width: inputs[1]!, effectiveDepth: inputs[2]! },
      again: ([a = 0, b = 0, depth = 0], s) => bottom(s) * a * b + wall(s, depth) * 2 * (a + b),
    }
  }),
}
const bottom = (s: CountedSurface): number => (s === 'sidewall' ? 0 : 1)
const wall = (s: CountedSurface, depth: number): number =>
  s === 'bottom' ? 0 : s === 'bottom-and-one-foot-of-sidewall' ? 1 : depth

describe.each(Object.keys(SHAPES))('%s', (name) => {
  test.each(COUNTED_SURFACES)('%s: value, propagation and printed steps', (surface) => {
    fc.assert(
      fc.property(SHAPES[name]!, ({ shape, again, inputs }) => {
        const { value, steps } = must(absorptionArea(shape, surface))
        expect(value.value).toBeCloseTo(
          again(
            inputs.map((input) => input.value),
            surface,
          ),
          8,
        )
        for (const step of steps) expect(redo(step) / resultOf(step)).toBeCloseTo(1, 4)
      }),
      { numRuns: 40 },
    )
    for (const { shape, again, inputs } of fc.sample(SHAPES[name]!, { seed: 7, numRuns: 2 })) {
      const drawn = monteCarlo((values) => again(values, surface), inputs, { trials: 30_000 })
      const u = standardUncertainty(must(absorptionArea(shape, surface)).value)
      expect(Math.abs(u / drawn.standardDeviation - 1)).toBeLessThan(looseness(30_000))
    }
  })
})

describe('refused, every fault at once', () => {
  const pointers = (shape: AbsorptionShape, counts: CountedSurface) => {
    const answer = absorptionArea(shape, counts)
    return answer.ok ? [] : answer.error.map(({ pointer }) => pointer)
  }
  test('a wall that was not measured can’t be counted', () => {
    const trench: AbsorptionShape = { kind: 'trenches', width: exact(3), lengths: [exact(50)] }
    expect(pointers(trench, 'sidewall')).toEqual(['/effectiveDepth'])
    expect(pointers(trench, 'bottom')).toEqual([])
    expect(pointers({ kind: 'mound', basalLength: exact(9), basalWidth: exact(9) }, 'sidewall')).toEqual([
      '/effectiveDepth',
    ])
  })
  test('what is no length or no count', () => {
    expect(pointers(pit(0, -1, 1.5), 'sidewall')).toEqual(['/effectiveDepth', '/diameter', '/count'])
    expect(pointers({ kind: 'trenches', width: exact(0), lengths: [exact(5), exact(0)] }, 'bottom')).toEqual([
      '/width',
      '/lengths/1',
    ])
    expect(pointers({ kind: 'trenches', width: exact(3), lengths: [] }, 'bottom')).toEqual(['/lengths'])
    expect(pointers({ kind: 'chambers', width: exact(3), lengths: [exact(5)], credit: 0 }, 'bottom')).toEqual(
      ['/credit'],
    )
  })
})
