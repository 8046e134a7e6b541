import { compareWithMinimum, type MinimumVerdict } from '../../measure/compare.ts'
import { extremes, type Shifts, spread } from '../../measure/extremes.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import type { Uncertain } from '../../measure/uncertain.ts'
import { estimates } from '../position/estimate.ts'
import type { Vertex } from '../position/polygon.ts'
import { causesOf, placeAt } from '../position/shifted.ts'
import type { Located } from '../position/sightings.ts'
import { type Extent, type Spanned, separation, spans } from './extent.ts'

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
      nearest: spread(low.value, (low.value - low.least) / 2, low, 'distance'),
      farthest: spread(high.value, (high.most - high.value) / 2, high, 'distance'),
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
    ...spanSteps(here, there, near, far, value),
    ...(verdict === 'falls-short' ? high.steps : low.steps),
    ...(verdict === 'too-close-to-call' && far.farthest.value > near.nearest.value ? high.steps : []),
  ])
}

/** Its outline is known once its place is. */
const isFixed = (extent: Extent): boolean =>
  extent.kind === 'point' || extent.kind === 'wall' || (extent.kind === 'disc' && extent.beside === 0)

const vertex = ({ x, y }: { readonly x: number; readonly y: number }): Vertex => [x, y]

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

/** From which point to which the distance runs, and what comes off for how far the two reach beyond them. */
function spanSteps(here: Body, there: Body, near: Near, far: Near, it: SetbackAnswer): readonly Step[] {
  const of = ({ a, b }: Near) =>
    spans({ at: vertex(a), extent: here.extent }, { at: vertex(b), extent: there.extent })
  const { nearest } = of(near)
  const { farthest } = of(far)
  const low = Number.isFinite(nearest.reach)
    ? [
        spanStep(
          `Nearest, from edge to edge${notes(here, there)}`,
          'nearest = d − reach',
          nearest,
          it.nearest.value,
        ),
      ]
    : []
  const open = it.farthest.value - it.nearest.value > 1e-6
  return [
    ...low,
    ...(open
      ? [
          spanStep(
            'Farthest, however it lies and whichever point of it was tied',
            'farthest = d − reach',
            farthest,
            it.farthest.value,
          ),
        ]
      : []),
  ]
}

const spanStep = (says: string, formula: string, { from, to, reach }: Spanned, ft: number): Step => ({
  says,
  formula,
  numbers:
    `√((${m(to[0])} − ${m(from[0])})² + (${m(to[1])} − ${m(from[1])})²)` +
    (reach > 0 ? ` − ${m(reach)}` : ''),
  result: `${m(ft)} ft`,
})

/** Sizes that go into it, in words. */
function notes(here: Body, there: Body): string {
  const told = [here.extent, there.extent].flatMap((extent) => {
    if (extent.kind === 'disc') return [`radius ${m(extent.radius)} ft`]
    if (extent.kind !== 'bar') return []
    const lies =
      extent.bearing === null ? 'lying any way' : `${m((extent.bearing * 180) / Math.PI)}° from the wall`
    return [`${m(extent.length)} by ${m(extent.width)} ft, ${lies}, tied somewhere along it`]
  })
  return told.length === 0 ? '' : ` (${told.join('; ')})`
}

/** Thousandths of a foot: a coordinate below zero in brackets, so that it reads as one. */
const m = (value: number): string => {
  const text = String(Math.round(value * 1000) / 1000)
  return text.startsWith('-') ? `(−${text.slice(1)})` : text
}
