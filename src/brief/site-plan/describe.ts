import { printLength } from '../../measure/print/length.ts'
import { groundInWords } from '../../words/ground.ts'
import type { PlanLine } from './lines.ts'
import type { Mark } from './mark.ts'
import type { SitePlan } from './plan.ts'
import type { Ring, Within } from './rings.ts'

/** The plan in words, line by line: the same that the drawing shows, for those who can't see it. */
export function describeSitePlan(plan: SitePlan): readonly string[] {
  const { reference, marks, lines, rings, within, fixes, coverage } = plan
  const { a, b, wall, baselineFt, bearingDeg } = reference
  const where = wall ? `, both on the ${wall} wall of the house` : ''
  const corners = `Corner A: ${a}. Corner B: ${b}, ${feet(baselineFt)} from A${where}.`
  const north =
    bearingDeg === null ? 'North is not known.' : `From A to B the compass reads ${Math.round(bearingDeg)}°.`
  return [
    corners,
    north,
    ...marks.map((mark) => describe(mark, coverage)),
    ...lines.filter(isFirst).map(lineInWords),
    ...rings.map((ring) => ringInWords(ring, within)),
    ...fixes.map(
      ({ label, fix }) =>
        `${begun(label)}: a satellite fix, ${fix.lat.toFixed(5)}, ${fix.lon.toFixed(5)}, good to ${feet(fix.radiusFt)} (${Math.round(fix.coverage * 100)} %); the corners have none, so it is not drawn.`,
    ),
  ]
}

const describe = (mark: Mark, coverage: number): string =>
  `${begun(mark.label)}, ${mark.by === 'recorded' ? 'as recorded' : 'as found'}: ${whereOf(mark, coverage)}`

/** Where from the corners it is, and how well that is known. */
export function whereOf({ x, y, region, mirror }: Mark, coverage: number): string {
  const along =
    Math.abs(x) < 0.05
      ? 'level with A'
      : `${feet(Math.abs(x))} ${x > 0 ? 'from A toward B' : 'from A away from B'}`
  const off =
    Math.abs(y) < 0.05
      ? 'on the line of the wall'
      : `${feet(Math.abs(y))} ${y > 0 ? 'out from the wall' : 'on the house side of the wall'}`
  const twin = mirror ? ' One of two places: no side is named.' : ''
  return `${along}, ${off}; it lies in ${groundInWords(region)} (${Math.round(coverage * 100)} %).${twin}`
}

/** A line to several places is one line. */
const isFirst = ({ label }: PlanLine, at: number, all: readonly PlanLine[]): boolean =>
  all.findIndex((it) => it.label === label) === at

function lineInWords({ label, by, path, change }: PlanLine): string {
  const what = change
    ? change.permit === null
      ? `replaced (${change.says}), and no permit shows it`
      : `put in under permit ${change.permit} (${change.says})`
    : by === 'found'
      ? 'found, and no change of it is known'
      : 'on record'
  return `${begun(label)}: ${what}; ${path ? 'drawn straight, its way is not known' : 'nothing places its ends, so it is not drawn'}.`
}

function ringInWords({ well, ft, keepsOut }: Ring, within: readonly Within[]): string {
  const inside = within.filter((it) => it.well === well && it.ft === ft)
  const near = inside.map(({ label, distanceFt }) => `${label} is ${feet(distanceFt)} away`).join(', ')
  return `${begun(well)}: the rule keeps ${keepsOut.join(', ')} ${ft} ft from it; ${near || 'nothing on the plan is nearer'}.`
}

const begun = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1)

/** To the inch: finer would pretend. */
const feet = (ft: number): string => printLength(Math.round(ft * 12) / 12)
