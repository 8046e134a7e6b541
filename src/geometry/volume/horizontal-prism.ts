import { err, ok } from '../../base/result.ts'
import { type Faults, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import type { Measured } from './body.ts'
import { ellipseSection, ovalSection, type SectionOf } from './section.ts'
import type { HorizontalOval, LyingEllipse } from './tank-shape.ts'

/** Lying tank of oval or elliptical section with flat ends: V = A × L, A the wetted part of the section. */
export function horizontalPrism(shape: HorizontalOval | LyingEllipse): Measured {
  const { width, height, length, liquidDepth } = shape
  const faults: Faults = []
  positive(faults, '/width', 'inside width', width)
  positive(faults, '/height', 'inside height', height)
  positive(faults, '/length', 'inside length', length)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside height', height])
  if (faults.length > 0) return err(faults)

  const sectionOf: SectionOf = shape.kind === 'horizontal-oval' ? ovalSection : ellipseSection
  const [w, H, L, h] = [width.value, height.value, length.value, Math.min(liquidDepth.value, height.value)]
  const section = sectionOf(w, H, h)
  return ok({
    inputs: [width, height, length, liquidDepth],
    cuFt: section.area * L,
    slopes: [section.slopeOfWidth * L, section.slopeOfHeight * L, section.area, section.breadth * L],
    volumeAt: ([a = 0, b = 0, l = 0, level = 0]) => sectionOf(a, b, level).area * l,
    surfaceAt: ([a = 0, b = 0, l = 0, level = 0]) => sectionOf(a, b, level).breadth * l,
    write: () => [
      shape.kind === 'horizontal-oval' ? ovalStep(w, H, h, section.area) : ellipseStep(w, H, h, section.area),
      {
        says: 'Volume of the liquid, flat ends',
        formula: 'V = A × L',
        numbers: `${n(section.area)} sq ft × ${n(L)} ft`,
        result: `${n(section.area * L)} cu ft`,
      },
    ],
  })
}

/** A circle’s segment with the numbers in it, `d` the diameter and `h` the level. */
export const segmentNumbers = (d: number, h: number): string =>
  `${n(d)}² ÷ 4 × acos(1 − 2 × ${n(h)} ÷ ${n(d)}) − (${n(d)} ÷ 2 − ${n(h)}) × √(${n(h)} × (${n(d)} − ${n(h)}))`

/** The same with letters. In d, not r, so that printed numbers never put the level above the crown. */
export const SEGMENT = 'd² ÷ 4 × acos(1 − 2 × h ÷ d) − (d ÷ 2 − h) × √(h × (d − h))'

function ovalStep(w: number, H: number, h: number, area: number): Step {
  const result = `${n(area)} sq ft`
  if (w >= H)
    return {
      says: 'Wetted section of an oval w wide and H high, d = H',
      formula: `A = (w − H) × h + ${SEGMENT}`,
      numbers: `(${n(w)} − ${n(H)}) × ${n(h)} + ${segmentNumbers(H, h)}`,
      result,
    }
  if (h <= w / 2)
    return {
      says: 'Wetted section, in the lower half circle, d = w',
      formula: `A = ${SEGMENT}`,
      numbers: segmentNumbers(w, h),
      result,
    }
  if (h <= H - w / 2)
    return {
      says: 'Wetted section, up to between the straight sides',
      formula: 'A = π × w² ÷ 8 + w × (h − w ÷ 2)',
      numbers: `π × ${n(w)}² ÷ 8 + ${n(w)} × (${n(h)} − ${n(w)} ÷ 2)`,
      result,
    }
  return {
    says: 'Wetted section, up into the upper half circle: the whole less what is dry, d = w and g = H − h',
    formula: `A = π × w² ÷ 4 + w × (H − w) − (${SEGMENT.replaceAll('h', 'g')})`,
    numbers: `π × ${n(w)}² ÷ 4 + ${n(w)} × (${n(H)} − ${n(w)}) − (${segmentNumbers(w, H - h)})`,
    result,
  }
}

const ellipseStep = (w: number, H: number, h: number, area: number): Step => ({
  says: 'Wetted section of an ellipse w wide and H high: a circle’s, d = H, stretched by w ÷ H',
  formula: `A = w ÷ H × (${SEGMENT})`,
  numbers: `${n(w)} ÷ ${n(H)} × (${segmentNumbers(H, h)})`,
  result: `${n(area)} sq ft`,
})
