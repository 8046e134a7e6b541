import { compareWithMinimum, type MinimumVerdict } from '../../measure/compare.ts'
import { extremes, type Shifts } from '../../measure/extremes.ts'
import { printSignificant } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { type Uncertain, uncertain } from '../../measure/uncertain.ts'
import { estimates } from '../position/estimate.ts'
import type { Vertex } from '../position/polygon.ts'
import { causesOf, placeAt } from '../position/shifted.ts'
import type { Located } from '../position/sightings.ts'
import { type Extent, separation } from './extent.ts'

/** A thing with its place and its extent. */
export type Body = { readonly located: Located; readonly extent: Extent }

export type SetbackAnswer = {
  readonly verdict: MinimumVerdict
  /** Outline to outline at the nearest, and at the farthest where what is known leaves a span, ft. */
  readonly nearest: Uncertain
  readonly farthest: Uncertain
  readonly requiredFt: number
  /** More than one place was in question: no side is named. */
  readonly ambiguous: boolean
}

/** A bearing off by a compass's ±5° (common practice): standard uncertainty, radians. */
const BEARING_U = ((5 / Math.sqrt(3)) * Math.PI) / 180
const BEARINGS = ['bearing here', 'bearing there'] as const

/**
 * Whether two things keep a distance, from outline to outline. It is met only if the nearest that their places, sizes and
 * bearings leave reaches it, and missed only if the farthest falls short; between them it is too close to call. The
 * uncertainty is that of both places solved again within two standard uncertainties: along an arc a slope misleads.
 */
export function setback(here: Body, there: Body, requiredFt: number): Worked<SetbackAnswer> {
  const places = estimates(here.located).flatMap((a) => estimates(there.located).map((b) => [a, b] as const))
  const spans = places.map(([a, b]) => {
    const at = (shifts: Shifts) =>
      separation(
        {
          at: vertex(placeAt(here.located, a.half, shifts)),
          extent: turned(here.extent, shifts.get(BEARINGS[0])),
        },
        {
          at: vertex(placeAt(there.located, b.half, shifts)),
          extent: turned(there.extent, shifts.get(BEARINGS[1])),
        },
      )
    const causes = [
      ...causesOf(here.located, there.located),
      ...BEARINGS.filter((_, i) => hasBearing([here, there][i]!)),
    ]
    const low = extremes((shifts) => at(shifts).nearest, causes)
    // Where nothing is open the nearest is the farthest.
    const one = isFixed(here.extent) && isFixed(there.extent)
    const high = one ? low : extremes((shifts) => at(shifts).farthest, causes)
    return {
      a,
      b,
      nearest: uncertain(low.value, (low.value - low.least) / 2, 'distance'),
      farthest: uncertain(high.value, (high.most - high.value) / 2, 'distance'),
    }
  })
  const near = spans.reduce((best, it) => (it.nearest.value < best.nearest.value ? it : best))
  const far = spans.reduce((best, it) => (it.farthest.value > best.farthest.value ? it : best))
  const [low, high] = [
    compareWithMinimum(near.nearest, requiredFt, 'ft'),
    compareWithMinimum(far.farthest, requiredFt, 'ft'),
  ]
  const verdict =
    low.value.verdict === 'suffices'
      ? 'suffices'
      : high.value.verdict === 'falls-short'
        ? 'falls-short'
        : 'too-close-to-call'
  const value: SetbackAnswer = {
    verdict,
    nearest: near.nearest,
    farthest: far.farthest,
    requiredFt,
    ambiguous: places.length > 1,
  }
  return worked(value, () => [
    {
      says: 'Between the two points that were tied',
      formula: 'd = √((x′ − x)² + (y′ − y)²)',
      numbers: `√((${n(near.b.x)} − ${n(near.a.x)})² + (${n(near.b.y)} − ${n(near.a.y)})²)`,
      result: `${n(Math.hypot(near.b.x - near.a.x, near.b.y - near.a.y))} ft`,
    },
    ...reachSteps(here, there, near, value),
    ...(verdict === 'falls-short' ? high.steps : low.steps),
    ...(verdict === 'too-close-to-call' && far.farthest.value > near.nearest.value ? high.steps : []),
  ])
}

/** Its outline is known once its place is. */
const isFixed = (extent: Extent): boolean =>
  extent.kind === 'point' || extent.kind === 'wall' || (extent.kind === 'disc' && extent.beside === 0)

const vertex = ({ x, y }: { readonly x: number; readonly y: number }): Vertex => [x, y]
const n = (value: number): string => printSignificant(value, 4)

const hasBearing = ({ extent }: Body): boolean => extent.kind === 'bar' && extent.bearing !== null

const turned = (extent: Extent, shift: number | undefined): Extent =>
  shift !== undefined && extent.kind === 'bar' && extent.bearing !== null
    ? { ...extent, bearing: extent.bearing + BEARING_U * shift }
    : extent

/** The nearest that one comes to the other where both lie where they are taken to: quick, to tell which to ask of first. */
export const nominallyApart = (here: Body, there: Body): number =>
  Math.min(
    ...estimates(here.located).flatMap((a) =>
      estimates(there.located).map(
        (b) =>
          separation({ at: vertex(a), extent: here.extent }, { at: vertex(b), extent: there.extent }).nearest,
      ),
    ),
  )

type Near = {
  readonly a: { readonly x: number; readonly y: number }
  readonly b: { readonly x: number; readonly y: number }
}

/** How the extents come off the distance between the tied points. */
function reachSteps(here: Body, there: Body, { a, b }: Near, it: SetbackAnswer): readonly Step[] {
  const extents = [here.extent, there.extent]
  if (extents.every(({ kind }) => kind === 'point')) return []
  if (extents.some(({ kind }) => kind === 'unknown'))
    return [
      {
        says: 'How large one of them is nobody says, so that its edge may be nearer by any distance',
        formula: 'nearest = 0',
        numbers: '0',
        result: `${n(it.nearest.value)} ft`,
      },
    ]
  if (extents.some((extent) => extent.kind === 'wall' || (extent.kind === 'bar' && extent.bearing !== null)))
    return [
      {
        says: 'From outline to outline, least over their corners and sides',
        formula: 'nearest, farthest',
        numbers: extents.map(told).join('; '),
        result: `${n(it.nearest.value)} ft, ${n(it.farthest.value)} ft`,
      },
    ]
  const d = n(Math.hypot(b.x - a.x, b.y - a.y))
  const less = extents.flatMap((extent) =>
    extent.kind === 'disc'
      ? [n(extent.radius + extent.beside)]
      : extent.kind === 'bar'
        ? [`√(${n(extent.length)}² + (${n(extent.width)} / 2 + ${n(extent.beside)})²)`]
        : [],
  )
  return [
    {
      says: extents.some(({ kind }) => kind === 'bar')
        ? 'Its edge at the nearest: tied at one end and running toward the other thing, as nobody says which way it runs'
        : 'From edge to edge: the radii come off',
      formula: 'nearest = d − reach',
      numbers: [d, ...less].join(' − '),
      result: `${n(it.nearest.value)} ft`,
    },
  ]
}

const told = (extent: Extent): string =>
  extent.kind === 'bar'
    ? `${n(extent.length)} × ${n(extent.width)} ft, ${n((extent.bearing ?? 0) * (180 / Math.PI))}° from the wall`
    : extent.kind === 'disc'
      ? `radius ${n(extent.radius)} ft`
      : extent.kind === 'wall'
        ? `wall of ${n(Math.hypot(...extent.to))} ft`
        : extent.kind
