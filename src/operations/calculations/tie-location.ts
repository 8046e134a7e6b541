import { ok } from '../../base/result.ts'
import type { Side } from '../../catalog/choices.ts'
import type { FrameOnEarth } from '../../geometry/position/frame.ts'
import { type AccuracyMeaning, positionFromGps } from '../../geometry/position/gps-fix.ts'
import { type Leftover, locate } from '../../geometry/position/locate.ts'
import { type Region, regionsOf } from '../../geometry/position/region.ts'
import type { Located, Sighting } from '../../geometry/position/sightings.ts'
import { positionFromTwoTies } from '../../geometry/position/two-ties.ts'
import { printNumber } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { exact } from '../../measure/uncertain.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { type Answer, invalid } from '../refusal.ts'
import { readingsOf } from './readings.ts'

export type TieLocationAsked = {
  readonly baseline: FoundLength
  readonly a: FoundLength
  readonly b: FoundLength
  readonly side: Side | null
  /** Ties from further corners, each with its place in the frame of A and B. */
  readonly more: readonly {
    readonly corner: string
    readonly xFt: number
    readonly yFt: number
    readonly tie: FoundLength
  }[]
  /** A satellite fix of the thing and of where the frame lies. */
  readonly satellite: {
    readonly frame: FrameOnEarth
    readonly lat: number
    readonly lon: number
    readonly accuracyM: number
    readonly meaning: AccuracyMeaning
  } | null
}

export type TiePlace = {
  readonly side: Side
  readonly x: number
  readonly y: number
  readonly region: Region
}

export type TieLocationAnswer = {
  /** One place where the side is said or the readings tell it; else two, one each side of the wall's line. */
  readonly places: readonly TiePlace[]
  readonly sightAngleDeg: number
  readonly geometry: 'sound' | 'weak' | 'flat'
  readonly leftover: readonly Leftover[]
  readonly suspects: readonly string[]
  readonly steps: readonly Step[]
}

/** Where everything sighted of a thing puts it: two ties from the corners of one wall, further ties, a satellite fix. */
export function calculateTieLocation(asked: TieLocationAsked): Answer<TieLocationAnswer> {
  const { baseline, a, b, side, more, satellite } = asked
  const zero = [
    ...Object.entries({ baseline, a, b }),
    ...more.map(({ tie }, at) => [`more/${at}/tie`, tie] as const),
  ].filter(([, { ft }]) => ft <= 0)
  if (zero.length > 0) {
    return invalid(
      ...zero.map(([name]) => ({
        pointer: `/${name}`,
        message: 'is zero: a distance has to be more than that',
      })),
    )
  }
  const { plain } = readingsOf([baseline, a, b, ...more.map(({ tie }) => tie)])
  const [tieA, tieB, wall] = [
    plain(a, 'tie A', 'place'),
    plain(b, 'tie B', 'place'),
    plain(baseline, 'baseline', 'place'),
  ]
  const fix = positionFromTwoTies(tieA, tieB, wall)
  if (!fix.ok) {
    const { says, fixes } = fix.error
    const readings = fixes.map(({ says: fix }) => fix).join('; ')
    return invalid({
      pointer: '',
      message: readings === '' ? says : `${says}. It would fit with ${readings}`,
    })
  }
  const seen = satellite && satelliteFix(satellite)
  if (seen && milesOff(seen.value) > MOST_MILES) {
    return invalid({
      pointer: '/satellite',
      message: `lies ${printNumber(Math.round(milesOff(seen.value)))} miles from corner A: check both latitudes and longitudes`,
    })
  }
  const located: Located = {
    half: side === null ? null : side === 'away' ? 1 : -1,
    sightings: [
      { kind: 'tie', corner: 'A', at: { x: exact(0), y: exact(0) }, tie: tieA },
      { kind: 'tie', corner: 'B', at: { x: wall, y: exact(0) }, tie: tieB },
      ...more.map(
        ({ corner, xFt, yFt, tie }): Sighting => ({
          kind: 'tie',
          corner,
          at: { x: exact(xFt), y: exact(yFt) },
          tie: plain(tie, `tie ${corner}`, 'place'),
        }),
      ),
      ...(seen ? [seen.value] : []),
    ],
  }
  const joint = more.length > 0 || seen ? locate(located) : null
  return ok({
    places: regionsOf(located).map((region) => ({
      side: side ?? (region.best.y >= 0 ? 'away' : 'toward'),
      ...region.best,
      region,
    })),
    sightAngleDeg: fix.value.value.sightAngleDeg,
    geometry: fix.value.value.geometry,
    leftover: joint?.value.leftover ?? [],
    suspects: joint?.value.suspects ?? [],
    steps: [...fix.value.steps, ...(seen?.steps ?? []), ...(joint?.steps ?? [])],
  })
}

/** Farther from the house than this nothing of its system is. */
const MOST_MILES = 1
const milesOff = (it: Sighting): number =>
  it.kind === 'fix' ? Math.hypot(it.point.x.value, it.point.y.value) / 5_280 : 0

function satelliteFix({
  frame,
  lat,
  lon,
  accuracyM,
  meaning,
}: NonNullable<TieLocationAsked['satellite']>): Worked<Sighting> {
  const name = 'satellite fix'
  const placed = positionFromGps({ latDeg: lat, lonDeg: lon, accuracyM, meaning }, frame, name)
  return worked({ kind: 'fix' as const, name, point: placed.value }, () => placed.steps)
}
