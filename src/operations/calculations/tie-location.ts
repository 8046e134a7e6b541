import { ok } from '../../base/result.ts'
import { type Ellipse, errorEllipse } from '../../geometry/position/ellipse.ts'
import type { Point } from '../../geometry/position/point.ts'
import { positionFromTwoTies } from '../../geometry/position/two-ties.ts'
import type { Step } from '../../measure/step.ts'
import type { Side } from '../../records/component.ts'
import type { FoundLength } from '../../records/quantity.ts'
import { type Answer, invalid } from '../refusal.ts'
import { readingsOf } from './readings.ts'

export type TieLocationAsked = {
  readonly baseline: FoundLength
  readonly a: FoundLength
  readonly b: FoundLength
  readonly side: Side | null
}

export type TiePlace = { readonly side: Side; readonly point: Point; readonly ellipse: Ellipse }

export type TieLocationAnswer = {
  /** One place where the side is said; two, one each side of the wall's line, where it is not. */
  readonly places: readonly TiePlace[]
  readonly sightAngleDeg: number
  readonly geometry: 'sound' | 'weak' | 'flat'
  readonly drmsFt: number
  readonly steps: readonly Step[]
}

/** Where two ties from the corners A and B of one wall put a thing. */
export function calculateTieLocation({ baseline, a, b, side }: TieLocationAsked): Answer<TieLocationAnswer> {
  const zero = Object.entries({ baseline, a, b }).filter(([, { ft }]) => ft <= 0)
  if (zero.length > 0) {
    return invalid(
      ...zero.map(([name]) => ({
        pointer: `/${name}`,
        message: 'is zero: a distance has to be more than that',
      })),
    )
  }
  const { plain } = readingsOf([baseline, a, b])
  const fix = positionFromTwoTies(
    plain(a, 'tie A', 'place'),
    plain(b, 'tie B', 'place'),
    plain(baseline, 'baseline', 'place'),
  )
  if (!fix.ok) {
    const { says, fixes } = fix.error
    const readings = fixes.map(({ says: fix }) => fix).join('; ')
    return invalid({
      pointer: '',
      message: readings === '' ? says : `${says}. It would fit with ${readings}`,
    })
  }
  const { value, steps } = fix.value
  const at = (of: Side): TiePlace => ({ side: of, point: value[of], ellipse: errorEllipse(value[of]) })
  return ok({
    places: side === null ? [at('away'), at('toward')] : [at(side)],
    sightAngleDeg: value.sightAngleDeg,
    geometry: value.geometry,
    drmsFt: value.drmsFt,
    steps,
  })
}
