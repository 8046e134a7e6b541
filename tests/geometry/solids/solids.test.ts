import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deriveSolids, solidsFaults } from '../../../src/geometry/solids/derive-solids.ts'
import { evaluateSolidsRule } from '../../../src/geometry/solids/evaluate-solids-rule.ts'
import {
  SOLIDS_DISTANCES,
  SOLIDS_SHARE,
  type SolidsReadings,
} from '../../../src/geometry/solids/solids-readings.ts'
import type { SolidsRule, SolidsVerdict } from '../../../src/geometry/solids/solids-rule.ts'
import { exact, standardUncertainty, type Uncertain, uncertain } from '../../../src/measure/uncertain.ts'
import type { SolidsRule as PackSolidsRule } from '../../../src/rules/values/solids-rules.ts'
import { looseness, monteCarlo } from '../../measure/monte-carlo.ts'
import { redo, resultOf } from '../../measure/redo-step.ts'
import published from '../../oracles/solids/rules.json' with { type: 'json' }
import lesson from '../../oracles/worked-tank-examples/solids-share.json' with { type: 'json' }

const rules = published.rules as unknown as readonly SolidsRule[]
/** What a pack holds is what the evaluation takes: the compiler says so here. */
const fromPack = (it: PackSolidsRule): SolidsRule => it

const rule = (id: string): SolidsRule => rules.find((it) => it.id === id)!
const inches = (value: number, u = 0, name = 'r'): Uncertain => uncertain(value / 12, u / 12, name)

/** 48 in of liquid, outlet device from 6 in above to 18 in below it. */
const tank = (sludge: number, scumBelow: number, scumAbove: number, u = 0): SolidsReadings => ({
  liquidDepth: inches(48, u, 'depth'),
  sludgeThickness: inches(sludge, u, 'sludge'),
  scumTopAboveLiquid: inches(scumAbove, u, 'scum top'),
  scumBottomBelowLiquid: inches(scumBelow, u, 'scum bottom'),
  outletBottomBelowLiquid: inches(18, u, 'outlet bottom'),
  outletTopAboveLiquid: inches(6, u, 'outlet top'),
})
const verdict = (id: string, readings: SolidsReadings, gal: number | null = 1000): SolidsVerdict =>
  evaluateSolidsRule(rule(id), readings, gal).value.verdict

describe(lesson.source, () => {
  const readings: SolidsReadings = {
    liquidDepth: inches(lesson.depthIn),
    sludgeThickness: inches(lesson.sludgeIn),
    scumThickness: inches(lesson.scumIn),
  }
  test('30 % of the depth, so it is pumped by the 25 % rule', () => {
    const share = deriveSolids(readings, SOLIDS_SHARE)
    const pct = share.known ? share.worked.value.value : Number.NaN
    expect(Math.abs(pct - lesson.percent.value)).toBeLessThanOrEqual(lesson.percent.tolerance)
    expect(pct).toBeGreaterThan(lesson.ruleOfPercent)
    expect(verdict('pct25', readings)).toBe('due')
  })
})

test('10 in of sludge and 5 of scum in 60 in are just 25 % (August 2015 lesson of the same journal): not above', () => {
  const readings = { liquidDepth: inches(60), sludgeThickness: inches(10), scumThickness: inches(5) }
  expect(verdict('pct25', readings)).toBe('not-due')
  expect(verdict('pct25', { ...readings, scumThickness: inches(5.1) })).toBe('due')
})

describe('distances to the outlet device', () => {
  const at = (readings: SolidsReadings, which: keyof typeof SOLIDS_DISTANCES): number => {
    const distance = deriveSolids(readings, SOLIDS_DISTANCES[which])
    return distance.known ? distance.worked.value.value : Number.NaN
  }
  test('by hand: 48 − 20 − 18 = 10; 18 − 12 = 6; 6 − 3 = 3 in', () => {
    const readings = tank(20, 12, 3)
    expect(at(readings, 'sludge-top-to-outlet-bottom')).toBeCloseTo(10, 9)
    expect(at(readings, 'scum-bottom-to-outlet-bottom')).toBeCloseTo(6, 9)
    expect(at(readings, 'scum-top-to-outlet-top')).toBeCloseTo(3, 9)
  })
  test('solids past the outlet device are a negative distance', () => {
    expect(at(tank(35, 20, 8), 'sludge-top-to-outlet-bottom')).toBeCloseTo(-5, 9)
    expect(at(tank(35, 20, 8), 'scum-bottom-to-outlet-bottom')).toBeCloseTo(-2, 9)
  })
  test('any two of the scum’s thickness, top and bottom give the third', () => {
    const { scumTopAboveLiquid, scumBottomBelowLiquid, ...rest } = tank(20, 12, 3)
    const scumThickness = inches(15)
    for (const readings of [
      { ...rest, scumTopAboveLiquid, scumThickness },
      { ...rest, scumBottomBelowLiquid, scumThickness },
    ] as SolidsReadings[]) {
      expect(at(readings, 'scum-bottom-to-outlet-bottom')).toBeCloseTo(6, 9)
      expect(at(readings, 'scum-top-to-outlet-top')).toBeCloseTo(3, 9)
    }
  })
  test('what was not read is named, and nothing is assumed for it', () => {
    const distance = deriveSolids(
      { liquidDepth: inches(48) },
      SOLIDS_DISTANCES['sludge-top-to-outlet-bottom'],
    )
    expect(distance).toEqual({
      known: false,
      lacking: ['the sludge thickness', 'how far the outlet device reaches below the liquid'],
    })
  })
  test('uncertainty by draws, steps by calculator', () => {
    const readings = tank(20, 12, 3, 0.5)
    const all = [...Object.values(SOLIDS_DISTANCES), SOLIDS_SHARE]
    for (const derivation of all) {
      const derived = deriveSolids({ ...readings, scumThickness: inches(15, 0.5, 'scum') }, derivation)
      if (!derived.known) throw new Error(derivation.says)
      const inputs = derivation.needs.map(
        (need) => ({ ...readings, scumThickness: inches(15, 0.5, 'scum') })[need]!,
      )
      const f = ([a = 0, b = 0, c = 0]: readonly number[]) =>
        derivation.unit === '%' ? ((a + b) / c) * 100 : (a - b - c) * 12
      const drawn = monteCarlo(f, inputs)
      const { value, steps } = derived.worked
      expect(Math.abs(standardUncertainty(value) / drawn.standardDeviation - 1)).toBeLessThan(looseness())
      expect(redo(steps[0]!)).toBeCloseTo(resultOf(steps[0]!), 3)
    }
  })
})

describe(published.source, () => {
  // [rule, sludge, scum below, scum above, verdict]: each threshold met exactly, and missed by a quarter inch.
  test.each([
    ['ma-15-351', 18, 10, 2, 'due'], // sludge 12 in from the tee
    ['ma-15-351', 17.75, 10, 2, 'not-due'],
    ['ma-15-351', 5, 16, 2, 'due'], // scum bottom 2 in from the tee's bottom
    ['ma-15-351', 5, 15.75, 2, 'not-due'],
    ['ma-15-351', 5, 10, 4, 'due'], // scum top 2 in from the tee's top
    ['ma-15-351', 5, 10, 3.75, 'not-due'],
    ['pima-7-21-050', 22, 10, 2, 'due'], // sludge 8 in
    ['pima-7-21-050', 21.75, 10, 2, 'not-due'],
    ['pima-7-21-050', 5, 15, 2, 'due'], // scum 3 in
    ['pima-7-21-050', 5, 14.75, 5, 'not-due'],
    ['phs-table', 24, 10, 2, 'due'], // 1,000 gal, 4 ft: 6 in
    ['phs-table', 23.75, 10, 2, 'not-due'],
    ['pct25', 6, 5, 2, 'due'], // 13 of 48 in: 27 %
    ['pct25', 6, 4, 2, 'not-due'], // 12 of 48 in: 25 %, and the rule says more than
  ] as const)('%s: sludge %s, scum %s below and %s above: %s', (id, sludge, below, above, wanted) => {
    expect(verdict(id, tank(sludge, below, above))).toBe(wanted)
  })

  test('the rules conflict and each keeps its own answer', () => {
    const readings = tank(19, 10, 2)
    expect(rules.map(({ id }) => verdict(id, readings))).toEqual(['due', 'not-due', 'not-due', 'due'])
  })

  const rows = (
    rule('phs-table').anyOf[1] as { rows: readonly { gal: number; liquidDepthFt: number; inches: number }[] }
  ).rows
  test.each(rows)('sludge table: $gal gal, $liquidDepthFt ft: $inches in', (row) => {
    const readings = (sludge: number): SolidsReadings => ({
      ...tank(0, 2, 2),
      liquidDepth: inches(row.liquidDepthFt * 12),
      sludgeThickness: inches(sludge),
      outletBottomBelowLiquid: inches(12),
    })
    const just = row.liquidDepthFt * 12 - 12 - row.inches
    expect(verdict('phs-table', readings(just), row.gal)).toBe('due')
    expect(verdict('phs-table', readings(just - 0.25), row.gal)).toBe('not-due')
  })
  test('between the table’s tanks the entry that calls soonest holds; outside it nothing is said', () => {
    const readings = tank(23, 2, 2)
    // 950 gal at 4 ft lies between 7 in (900) and 6 in (1,000): sludge 7 in away is due.
    expect(verdict('phs-table', readings, 950)).toBe('due')
    expect(verdict('phs-table', readings, 1000)).toBe('not-due')
    expect(verdict('phs-table', readings, 1500)).toBe('cannot-tell')
    expect(verdict('phs-table', readings, null)).toBe('cannot-tell')
    const deep = { ...readings, liquidDepth: inches(72) }
    expect(verdict('phs-table', deep, 1000)).toBe('cannot-tell')
    const { value } = evaluateSolidsRule(rule('phs-table'), readings, 1500)
    expect(value.conditions[1]!.lacking[0]).toContain('1,500 gal')
  })
})

describe('uncertainty and silence', () => {
  test('a threshold within U is too close to call, and firm beyond it', () => {
    // Three readings of u = 0.5 in: u = 0.87 in, U = 1.73 in about the 12 in limit.
    expect(verdict('ma-15-351', tank(18, 4, 1, 0.5))).toBe('too-close-to-call')
    expect(verdict('ma-15-351', tank(16.5, 4, 1, 0.5))).toBe('too-close-to-call')
    expect(verdict('ma-15-351', tank(16.1, 4, 1, 0.5))).toBe('not-due')
    expect(verdict('ma-15-351', tank(19.9, 4, 1, 0.5))).toBe('due')
  })
  test('one condition that is due decides, whatever else is lacking', () => {
    const { scumBottomBelowLiquid: _, ...rest } = tank(25, 4, 1)
    expect(verdict('ma-15-351', rest)).toBe('due')
  })
  test('what was not read is never taken for not due', () => {
    const { outletTopAboveLiquid: _, ...rest } = tank(5, 4, 1)
    const { value } = evaluateSolidsRule(rule('ma-15-351'), rest)
    expect(value.verdict).toBe('cannot-tell')
    expect(value.conditions.map(({ verdict: v }) => v)).toEqual(['not-due', 'cannot-tell', 'not-due'])
    expect(verdict('ma-15-351', {})).toBe('cannot-tell')
  })
  test('more solids never make a rule less due', () => {
    const rank = { 'not-due': 0, 'cannot-tell': 1, 'too-close-to-call': 1, due: 2 }
    const amount = fc.double({ min: 0, max: 12, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...rules), amount, amount, amount, amount, (it, sludge, below, more, u) => {
        const before = evaluateSolidsRule(it, tank(sludge, below, 1, u / 12), 1000).value.verdict
        const after = evaluateSolidsRule(it, tank(sludge + more, below + more / 2, 1, u / 12), 1000).value
          .verdict
        expect(rank[after]).toBeGreaterThanOrEqual(rank[before])
      }),
    )
  })
  test('a rule as a pack writes it, with its citations', () => {
    const packed = { ...rule('pct25'), citations: [] } as unknown as PackSolidsRule
    expect(evaluateSolidsRule(fromPack(packed), tank(6, 5, 2)).value.verdict).toBe('due')
  })
  test('the working ends in the verdict', () => {
    const { steps, value } = evaluateSolidsRule(rule('pima-7-21-050'), tank(22, 10, 2), 1000)
    expect(steps.at(-1)!.result).toBe(value.verdict)
    expect(steps.map(({ says }) => says)).toContain('Top of the sludge to the lower end of the outlet device')
  })
})

describe('readings that can’t be right', () => {
  const pointers = (readings: SolidsReadings) => solidsFaults(readings).map(({ pointer }) => pointer)
  test('each with its place', () => {
    expect(pointers(tank(20, 12, 3))).toEqual([])
    expect(pointers({})).toEqual([])
    expect(pointers({ liquidDepth: exact(0), sludgeThickness: exact(-1) })).toEqual([
      '/liquidDepth',
      '/sludgeThickness',
    ])
    expect(pointers(tank(50, 2, 2))).toEqual(['/sludgeThickness'])
    expect(pointers(tank(40, 12, 2))).toEqual(['/scumBottomBelowLiquid'])
    // Within what the readings allow, sludge may seem to meet the scum.
    expect(pointers(tank(40, 8.5, 2, 0.5))).toEqual([])
  })
})
