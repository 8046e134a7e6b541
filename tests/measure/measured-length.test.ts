import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  halfWidthFt,
  insideFromOutside,
  measuredLength,
  rectangular,
} from '../../src/measure/measured-length.ts'
import { isMethod, METHOD_NAMES, METHODS, type MethodPreset } from '../../src/measure/methods.ts'
import { TAPE_TOLERANCE, tapeToleranceFt } from '../../src/measure/tape-tolerance.ts'
import { minus, plus, standardUncertainty, uncertain } from '../../src/measure/uncertain.ts'
import oracle from '../oracles/nist-handbook-44/tape-tolerance.json' with { type: 'json' }
import { looseness, monteCarlo, uniform } from './monte-carlo.ts'

describe(oracle.source, () => {
  test.each(oracle.cases)('$ftFrom to $ftTo ft: ± $plusMinusIn in', ({ ftFrom, ftTo, plusMinusIn }) => {
    for (let ft = ftFrom; ft <= ftTo; ft++) expect(tapeToleranceFt(ft) * 12).toBe(plusMinusIn)
    // Between the table's whole feet the wider row holds.
    if (ftFrom > 0) expect(tapeToleranceFt(ftFrom - 0.5) * 12).toBe(plusMinusIn)
  })
  test('the table ends at 100 ft: a longer line is taped in pieces, and one tape’s errors add', () => {
    expect(TAPE_TOLERANCE.at(-1)!.ftTo).toBe(100)
    expect(tapeToleranceFt(106) * 12).toBe(1 / 4 + 1 / 32)
    expect(tapeToleranceFt(200) * 12).toBe(1 / 2)
    expect(tapeToleranceFt(250) * 12).toBe(1 / 2 + 1 / 8)
  })
  test('never less for more, and a length has no sign', () => {
    const ft = fc.double({ min: 0, max: 1000, noNaN: true })
    fc.assert(
      fc.property(ft, ft, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        // Just past a multiple of 100 the new short piece is held to less than the long one was: never below it.
        expect(tapeToleranceFt(less)).toBeLessThanOrEqual(tapeToleranceFt(more) + 1e-12)
        expect(tapeToleranceFt(-a)).toBe(tapeToleranceFt(a))
      }),
    )
  })
})

describe('methods', () => {
  test.each(METHOD_NAMES)('%s says what it rests on', (name) => {
    const { basis, says, status }: MethodPreset = METHODS[name]
    expect(says.length).toBeGreaterThan(5)
    const published = /NIST Handbook 44|WAC 246-272A/.test(basis)
    expect(published).toBe(status === 'published')
    // Whatever no document gives says that it is common practice, or that it only repeats the paper.
    if (!published) expect(basis).toMatch(/common practice|as written|place written/)
    expect(isMethod(name)).toBe(true)
  })
  test('a name that is none', () => {
    expect(isMethod('toString')).toBe(false)
    expect(isMethod('laser')).toBe(false)
  })
  test('rougher ways are more uncertain at 8 ft, in the order a surveyor would put them', () => {
    const u = METHOD_NAMES.map(
      (name) => [name, standardUncertainty(measuredLength(8, name, 'i', 'r'))] as const,
    )
    const of = Object.fromEntries(u)
    expect(of['rigid-rule']!).toBeLessThan(of['inside-tape']!)
    expect(of['inside-tape']!).toBeLessThan(of['outside-tape']!)
    expect(of['outside-tape']!).toBeLessThan(of.probe!)
    expect(of.probe!).toBeLessThan(of['by-eye']!)
    expect(of['stated-on-paper']).toBe(0)
  })
})

describe('a measured length', () => {
  test('by hand: 8 ft inside by tape, ±1/16 in of tape and ±1/2 in of reading', () => {
    const length = measuredLength(8, 'inside-tape', 'tape 1', 'length')
    expect(length.causes.get('tape 1')).toBeCloseTo(1 / 16 / 12 / Math.sqrt(3), 15)
    expect(length.causes.get('length')).toBeCloseTo(1 / 2 / 12 / Math.sqrt(3), 15)
  })
  test('a reading is never finer than it was written', () => {
    const rough = measuredLength(8, 'inside-tape', 't', 'r', { halfStepFt: 0.5 })
    expect(rough.causes.get('r')).toBeCloseTo(0.5 / Math.sqrt(3), 15)
    const paper = measuredLength(8, 'stated-on-paper', 'paper', 'r', { halfStepFt: 1 / 24 })
    expect([...paper.causes.keys()]).toEqual(['r'])
  })
  test('another table of methods', () => {
    const presets = { ...METHODS, probe: { ...METHODS.probe, reading: { inches: 1 } } }
    const length = measuredLength(8, 'probe', 'p', 'r', { presets })
    expect(standardUncertainty(length)).toBeCloseTo(1 / 12 / Math.sqrt(3), 15)
  })
  test('a share of the length grows with it', () => {
    expect(halfWidthFt({ shareOfLength: 0.1 }, 20)).toBeCloseTo(2, 12)
  })
  test('one tape over two lengths: its error stays in their sum and leaves their difference', () => {
    const [a, b] = [
      measuredLength(10, 'inside-tape', 'tape', 'a'),
      measuredLength(12, 'inside-tape', 'tape', 'b'),
    ]
    const alone = measuredLength(10, 'inside-tape', 'tape', 'a')
    expect(plus(a, b).causes.get('tape')).toBeCloseTo(2 * alone.causes.get('tape')!, 15)
    expect(minus(a, b).causes.has('tape')).toBe(false)
  })
})

test('half the width of a rectangle over √3 is its standard deviation (JCGM 100:2008 4.3.7)', () => {
  const next = uniform(437)
  let squares = 0
  const trials = 200_000
  for (let i = 0; i < trials; i++) squares += (2 * next() - 1) ** 2
  expect(Math.sqrt(squares / trials)).toBeCloseTo(rectangular(1), 2)
})

describe('inside from outside', () => {
  test('one wall thickness enters twice: its error doubles', () => {
    const inside = insideFromOutside(uncertain(8.5, 0.03, 'outside'), uncertain(0.25, 0.01, 'wall'))
    expect(inside.value).toBe(8)
    expect(inside.causes.get('wall')).toBeCloseTo(-0.02, 15)
    expect(standardUncertainty(inside)).toBeCloseTo(Math.hypot(0.03, 0.02), 15)
  })
  test('and by draws', () => {
    const [outside, wall] = [uncertain(8.5, 0.03, 'outside'), uncertain(0.25, 0.01, 'wall')]
    const drawn = monteCarlo(([o = 0, w = 0]) => o - 2 * w, [outside, wall])
    const u = standardUncertainty(insideFromOutside(outside, wall))
    expect(Math.abs(u / drawn.standardDeviation - 1)).toBeLessThan(looseness())
  })
  test('two walls measured apart: by squares', () => {
    const outside = uncertain(8.5, 0.03, 'outside')
    const inside = insideFromOutside(outside, uncertain(0.25, 0.01, 'a'), uncertain(0.25, 0.01, 'b'))
    expect(standardUncertainty(inside)).toBeCloseTo(Math.hypot(0.03, 0.01, 0.01), 15)
  })
})
