import { type Anchor, anchoredPoint, anchorOf } from '../../geometry/position/anchored.ts'
import type { GpsFix } from '../../geometry/position/gps-fix.ts'
import type { Sighting } from '../../geometry/position/sightings.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { uncertain } from '../../measure/uncertain.ts'
import { M_PER_FT } from '../../measure/units.ts'
import type { Fix, FoundComponent, SubmittedFindings } from '../../records/findings.ts'
import type { Part } from '../../records/part.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly } from '../quantity.ts'

/** A compass held along a wall: ±5° (common practice), nothing known between. */
const COMPASS_U = 5 / Math.sqrt(3)
/** Farther from the house than this nothing of its system is, ft. */
const MOST_FT = 5280

const MEANINGS = { 0.5: '50-percent-circle', 0.68: '68-percent-circle', 0.95: '95-percent-circle' } as const

const fixOf = ({ lat, lon, radiusFt, coverage }: Fix): GpsFix => ({
  latDeg: lat,
  lonDeg: lon,
  accuracyM: radiusFt * M_PER_FT,
  meaning: MEANINGS[coverage],
})

/** Where the corners of the inspection lie on the earth, where it took a fix of A, and of B or a bearing. */
export function anchorIn(
  { record: { cornerA, cornerB, reference } }: SubmittedFindings,
  recordedBearing: number | null,
): Anchor | null {
  const bearing = reference?.bearingDeg ?? recordedBearing
  return cornerA
    ? anchorOf(
        fixOf(cornerA),
        cornerB ? fixOf(cornerB) : null,
        bearing === null ? null : uncertain(bearing, COMPASS_U, 'compass'),
      )
    : null
}

/** A part's fix as a sighting in the frame of the corners; null where the corners have none, or it lies a mile off. */
export function sightedFix({ fix, label }: FoundComponent, anchor: Anchor | null): Worked<Sighting> | null {
  if (!fix || !anchor) return null
  const name = `satellite fix of ${label}`
  const placed = anchoredPoint(fixOf(fix), anchor, name)
  const { x, y } = placed.value
  if (Math.hypot(x.value, y.value) > MOST_FT) return null
  return worked({ kind: 'fix', name, point: placed.value }, () => placed.steps)
}

/** What the receiver said of one place. */
export const fixExhibit = (
  fix: Fix,
  thing: 'fix' | 'corner-fix',
  part: Part | null,
  component: FoundComponent['label'] | null,
  findings: string,
): Exhibit => ({
  thing,
  part,
  word: 'found',
  asStated: null,
  used: {
    fix: [fix.lat, fix.lon],
    radius: exactly(fix.radiusFt, 'ft'),
    coverage: exactly(fix.coverage * 100, '%'),
  },
  from: { kind: 'inspection', findings, component, how: 'by-satellite' },
})
