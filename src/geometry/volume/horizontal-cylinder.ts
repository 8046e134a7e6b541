import { err, ok } from '../../base/result.ts'
import { type Faults, positive, within } from '../../measure/length-faults.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { scale, type Uncertain } from '../../measure/uncertain.ts'
import type { Measured } from './body.ts'
import { circleSegment } from './circle-segment.ts'
import { dish, ellipticalHeads, type Heads, sphericalHeads } from './heads.ts'
import { SEGMENT, segmentNumbers } from './horizontal-prism.ts'
import type { HorizontalCylinder } from './tank-shape.ts'

/** A dish shallower than this share of the radius is not a dish anyone could measure, and its formula loses digits. */
const LEAST_RISE = 1e-3

/**
 * Lying cylinder filled to h, straight length L, with flat, dished or elliptical heads:
 *
 *     V = (r²·acos((r − h)/r) − (r − h)·√(2rh − h²)) × L + heads
 */
export function horizontalCylinder(shape: HorizontalCylinder): Measured {
  const { diameter, length, liquidDepth, ends = { kind: 'flat' } } = shape
  const faults: Faults = []
  positive(faults, '/diameter', 'inside diameter', diameter)
  positive(faults, '/length', 'inside length', length)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside diameter', diameter])
  const rise = riseOf(shape)
  if (rise) checkRise(faults, rise, diameter, ends.kind)
  if (faults.length > 0) return err(faults)

  const headsOf = ends.kind === 'spherical-segment' ? sphericalHeads : ellipticalHeads
  const [d, L, h] = [diameter.value, length.value, Math.min(liquidDepth.value, diameter.value)]
  const c = rise?.value
  const segment = circleSegment(d, h)
  const heads = c === undefined ? undefined : headsOf(d, h, c)
  const inputs = rise ? [diameter, length, liquidDepth, rise] : [diameter, length, liquidDepth]
  const cuFt = segment.area * L + (heads?.cuFt ?? 0)
  return ok({
    inputs,
    cuFt,
    slopes: [
      segment.slopeOfDiameter * L + (heads?.slopeOfDiameter ?? 0),
      segment.area,
      segment.chord * L + (heads?.slopeOfDepth ?? 0),
      heads?.slopeOfRise ?? 0,
    ],
    volumeAt: ([a = 0, l = 0, level = 0, bulge = 0]) =>
      circleSegment(a, level).area * l + (bulge > 0 ? headsOf(a, Math.min(level, a), bulge).cuFt : 0),
    surfaceAt: ([a = 0, l = 0, level = 0, bulge = 0]) =>
      circleSegment(a, level).chord * l + (bulge > 0 ? headsOf(a, Math.min(level, a), bulge).surface : 0),
    write: () => steps(ends.kind, { d, L, h, c }, segment.area, heads),
  })
}

function riseOf({ diameter, ends }: HorizontalCylinder): Uncertain | undefined {
  if (ends === undefined || ends.kind === 'flat') return undefined
  return ends.kind === 'elliptical' ? (ends.rise ?? scale(diameter, 1 / 4)) : ends.rise
}

function checkRise(faults: Faults, rise: Uncertain, diameter: Uncertain, kind: string): void {
  const pointer = '/ends/rise'
  positive(faults, pointer, 'rise of the heads', rise)
  if (kind !== 'spherical-segment' || !(rise.value > 0)) return
  if (rise.value < (LEAST_RISE * diameter.value) / 2)
    faults.push({
      pointer,
      message: 'The heads bulge by less than a thousandth of the radius: give flat ends.',
    })
  if (rise.value > diameter.value / 2)
    faults.push({
      pointer,
      message: 'The heads bulge by more than the radius: a dish is at most half a sphere.',
    })
}

type Numbers = { readonly d: number; readonly L: number; readonly h: number; readonly c: number | undefined }

function steps(
  kind: string,
  { d, L, h, c }: Numbers,
  area: number,
  heads: Heads | undefined,
): readonly Step[] {
  const n = (value: number): string => printSignificant(value, heads && kind !== 'elliptical' ? 10 : 6)
  const straight: readonly Step[] = [
    {
      says: 'Wetted section of a circle filled to h (angle in radians)',
      formula: `A = ${SEGMENT}`,
      numbers: segmentNumbers(d, h),
      result: `${printSignificant(area)} sq ft`,
    },
    {
      says: heads ? 'Liquid in the straight part' : 'Volume of the liquid, flat ends',
      formula: 'V = A × L',
      numbers: `${printSignificant(area)} sq ft × ${printSignificant(L)} ft`,
      result: `${printSignificant(area * L)} cu ft`,
    },
  ]
  if (!heads || c === undefined) return straight
  const both = `${printSignificant(heads.cuFt)} cu ft`
  const sum: Step = {
    says: 'Volume of the liquid, straight part and both heads',
    formula: 'V = straight + heads',
    numbers: `${printSignificant(area * L)} cu ft + ${both}`,
    result: `${printSignificant(area * L + heads.cuFt)} cu ft`,
  }
  if (kind === 'elliptical') {
    const numbers = `π × ${n(c)} × ${n(h)}² × (1 − 2 × ${n(h)} ÷ (3 × ${n(d)}))`
    const says = 'Liquid in both elliptical heads, c their rise'
    return [
      ...straight,
      { says, formula: 'V = π × c × h² × (1 − 2 × h ÷ (3 × d))', numbers, result: both },
      sum,
    ]
  }
  return [...straight, ...dishSteps(d, h, c, both), sum]
}

/** The dish by its antiderivative, enough digits shown to survive the differences in it. */
function dishSteps(d: number, h: number, c: number, both: string): readonly Step[] {
  const n = (value: number): string => printSignificant(value, 12)
  const { r, R, m, F } = dish(d, c)
  const y = h - r
  const q = Math.sqrt(h * (d - h))
  // A negative height stands in brackets, so that its square is the square of all of it.
  const ny = y < 0 ? `(${n(y)})` : n(y)
  // At the crown q is zero and each angle a right angle.
  const right = y < 0 ? '(−π ÷ 2)' : 'π ÷ 2'
  const along = q === 0 ? right : `atan(${ny} ÷ ${n(q)})`
  const angle = q === 0 ? right : `atan(${n(m)} × ${ny} ÷ (${n(R)} × ${n(q)}))`
  const behind = m === 0 ? 'π ÷ 2' : `atan(${n(q)} ÷ ${n(m)})`
  return [
    {
      says: 'Radius of the sphere the heads are cut from, c their rise; m = R − c',
      formula: 'R = (r² + c²) ÷ (2 × c)',
      numbers: `(${n(r)}² + ${n(c)}²) ÷ (2 × ${n(c)})`,
      result: `${n(R)} ft`,
    },
    {
      says: 'Level sections of one head added up to y = h − r, with q = √(r² − y²)',
      formula:
        'F(y) = (R² × y − y³ ÷ 3) × atan(q ÷ m) − 2 ÷ 3 × m × y × q ' +
        '− m × (r² + 2 × R²) ÷ 3 × atan(y ÷ q) + 2 ÷ 3 × R³ × atan(m × y ÷ (R × q))',
      numbers:
        `(${n(R)}² × ${ny} − ${ny}³ ÷ 3) × ${behind} − 2 ÷ 3 × ${n(m)} × ${ny} × ${n(q)} ` +
        `− ${n(m)} × (${n(r)}² + 2 × ${n(R)}²) ÷ 3 × ${along} + 2 ÷ 3 × ${n(R)}³ × ${angle}`,
      result: `${n(F(h))} cu ft`,
    },
    {
      says: 'Liquid in both dished heads',
      formula: 'V = 2 × (F(y) + F(r)), F(r) = π ÷ 6 × (2 × R³ − m × (r² + 2 × R²))',
      numbers: `2 × (${n(F(h))} + π ÷ 6 × (2 × ${n(R)}³ − ${n(m)} × (${n(r)}² + 2 × ${n(R)}²)))`,
      result: both,
    },
  ]
}
