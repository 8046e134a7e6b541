import { printLength } from '../../measure/print/length.ts'
import type { Mark, SitePlan } from './plan.ts'

/** The plan in words, line by line: the same that the drawing shows, for those who can't see it. */
export function describeSitePlan({ reference, marks, coverage }: SitePlan): readonly string[] {
  const { a, b, wall, baselineFt, bearingDeg } = reference
  const corners = `Corner A is ${a}, corner B is ${b}, ${feet(baselineFt)} apart${wall ? ` on the ${wall} wall of the house` : ''}.`
  const north =
    bearingDeg === null ? 'North is not known.' : `From A to B the compass reads ${Math.round(bearingDeg)}°.`
  return [corners, north, ...marks.map((mark) => describe(mark, coverage))]
}

function describe({ label, by, x, y, ellipse, mirror }: Mark, coverage: number): string {
  const along =
    Math.abs(x) < 0.05
      ? 'level with A'
      : `${feet(Math.abs(x))} ${x > 0 ? 'from A toward B' : 'from A away from B'}`
  const off =
    Math.abs(y) < 0.05
      ? 'on the line of the wall'
      : `${feet(Math.abs(y))} ${y > 0 ? 'out from the wall' : 'on the house side of the wall'}`
  const spread = `${feet(ellipse.semiMajor)} by ${feet(ellipse.semiMinor)} either way (${Math.round(coverage * 100)} %)`
  const twin = mirror ? ' One of two places: no side is named.' : ''
  return `${label}, ${by === 'recorded' ? 'as recorded' : 'as found'}: ${along}, ${off}; known to ${spread}.${twin}`
}

/** To the inch: finer would pretend. */
const feet = (ft: number): string => printLength(Math.round(ft * 12) / 12)
