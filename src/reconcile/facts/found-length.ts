import type { Material } from '../../catalog/choices.ts'
import { halfWidthFt, insideFromOutside, measuredLength, rectangular } from '../../measure/measured-length.ts'
import { type HalfWidth, METHODS, type Method, type MethodPreset } from '../../measure/methods.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { BetterMeasurement } from '../../measure/settling-measurement.ts'
import { plus, type Uncertain, uncertain } from '../../measure/uncertain.ts'
import type { Part } from '../../records/part.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Exhibit, Remeasurement } from '../outcome.ts'
import { exactly } from '../quantity.ts'
import { showLength } from '../show.ts'
import type { Thing } from '../thing.ts'

/** A reading by the name of what was read, that could be taken again. */
export type Again<Name extends string> = {
  readonly thing: Name
  readonly method: Method
  /** Nobody has measured it yet: a usual value stood in. */
  readonly first: boolean
}

/** A length with its uncertainty, and how it could be taken better. */
export type BareReading<Name extends string> = {
  readonly length: Uncertain
  readonly better: readonly BetterMeasurement<Again<Name>>[]
}

/** Whether a reading is the only one by its instrument. */
type Alone = (taken: FoundLength) => boolean

/** Readings by one instrument share its error; each reading has an error of its own, named after what was read. */
const instrumentCause = (taken: FoundLength): string => `instrument: ${taken.instrument}`
const readingCause = (of: string, name: string): string => `reading: ${name} of ${of}`

export const bareReading = <Name extends string>(
  taken: FoundLength,
  name: Name,
  of: string,
  alone: Alone,
): BareReading<Name> => ({
  length: measuredLength(taken.ft, taken.method, instrumentCause(taken), readingCause(of, name), {
    halfStepFt: taken.halfStepFt,
  }),
  better: betterThan(taken, name, of, alone(taken)),
})

/** A tape along the outside and a probe pushed down beside it both meet the outer face of the wall. */
const OVER_THE_OUTSIDE: readonly Method[] = ['outside-tape', 'probe']

export type WallTaken = { readonly thickness: FoundLength | null; readonly material: Material | null }

/** Inside length from a reading over the outside: the walls come off, as measured or, unmeasured, as is usual. */
export function bareInside<Name extends string>(
  taken: FoundLength,
  wall: WallTaken,
  name: Name,
  of: string,
  alone: Alone,
): BareReading<Name | 'wallThickness'> {
  const outside = bareReading<Name | 'wallThickness'>(taken, name, of, alone)
  if (!OVER_THE_OUTSIDE.includes(taken.method)) return outside
  const walls = wall.thickness
    ? bareReading(wall.thickness, 'wallThickness', of, alone)
    : usualWallOf(of, wall.material)
  return {
    length: insideFromOutside(outside.length, walls.length),
    better: [...outside.better, ...walls.better],
  }
}

type Wall = {
  readonly inches: number
  readonly halfWidthInches: number
  readonly of: 'precast' | 'shell' | 'masonry'
}

/** Precast walls run from 2½ in, the least in Pennsylvania's and Tennessee's rules, to about 4 in (common practice). */
const PRECAST: Wall = { inches: 3.25, halfWidthInches: 0.75, of: 'precast' }
/** Metal and plastic shells are between about an eighth and three eighths of an inch (common practice). */
const SHELL: Wall = { inches: 0.25, halfWidthInches: 0.125, of: 'shell' }
/** Blocks and bricks laid in one thickness: 8-inch block is 7⅝ in, and 6-inch block was used too (common practice). */
const MASONRY: Wall = { inches: 7, halfWidthInches: 1.5, of: 'masonry' }

const USUAL_WALL: { readonly [M in Material]?: Wall } = {
  steel: SHELL,
  fiberglass: SHELL,
  polyethylene: SHELL,
  'concrete-block': MASONRY,
  brick: MASONRY,
}

const wallOf = (material: Material | null): Wall => (material && USUAL_WALL[material]) ?? PRECAST

function usualWallOf(of: string, material: Material | null): BareReading<'wallThickness'> {
  const wall = wallOf(material)
  const cause = readingCause(of, 'wallThickness')
  const u = rectangular(wall.halfWidthInches / 12)
  return {
    length: uncertain(wall.inches / 12, u, cause),
    better: [
      {
        what: { thing: 'wallThickness', method: 'rigid-rule', first: true },
        replaces: [
          { cause, presentU: u, betterU: rectangular(halfWidthFt(METHODS['rigid-rule'].reading, 0.3)) },
        ],
      },
    ],
  }
}

/** The better way to take a reading that was taken roughly; none where it was taken as well as it can be. */
const BETTER: { readonly [M in Method]?: Method } = {
  'outside-tape': 'inside-tape',
  probe: 'inside-tape',
  wheel: 'ground-tape',
  pacing: 'ground-tape',
  'by-eye': 'inside-tape',
  'sounding-rod': 'liquid-level-rule',
}

/** An instrument that other readings share stays in the budget: replacing one reading does not fix the others. */
function betterThan<Name extends string>(
  taken: FoundLength,
  thing: Name,
  of: string,
  alone: boolean,
): readonly BetterMeasurement<Again<Name>>[] {
  const method = BETTER[taken.method]
  if (!method) return []
  const [now, then]: [MethodPreset, MethodPreset] = [METHODS[taken.method], METHODS[method]]
  const own = (half: HalfWidth) => rectangular(halfWidthFt(half, taken.ft))
  const replaces = [
    {
      cause: readingCause(of, thing),
      presentU: Math.max(own(now.reading), rectangular(taken.halfStepFt)),
      betterU: own(then.reading),
    },
  ]
  if (alone) {
    replaces.push({
      cause: instrumentCause(taken),
      presentU: own(now.instrument),
      betterU: own(then.instrument),
    })
  }
  return [{ what: { thing, method, first: false }, replaces }]
}

/** A reading that could be taken again, and what that would do. */
export type Better = BetterMeasurement<Remeasurement>

/** A reading with its uncertainty, its exhibits, and how it could be taken better. */
export type Reading = {
  readonly length: Uncertain
  readonly exhibits: readonly Exhibit[]
  readonly better: readonly Better[]
}

/** Whose readings they are, and whether a reading is the only one by its instrument. */
export type Taking = {
  readonly part: Part
  /** The firm's label, which names the causes of error. */
  readonly of: string
  readonly findings: string
  readonly alone: Alone
}

export const reading = (taken: FoundLength, thing: Thing, taking: Taking): Reading =>
  shownAs(bareReading(taken, thing, taking.of, taking.alone), [exhibit(taken, thing, taking)], taking)

export function insideReading(taken: FoundLength, wall: WallTaken, thing: Thing, taking: Taking): Reading {
  const outside = OVER_THE_OUTSIDE.includes(taken.method)
  const walls = !outside
    ? []
    : [wall.thickness ? exhibit(wall.thickness, 'wallThickness', taking) : usualWall(wall.material, taking)]
  return shownAs(
    bareInside(taken, wall, thing, taking.of, taking.alone),
    [exhibit(taken, thing, taking), ...walls],
    taking,
  )
}

const shownAs = (
  { length, better }: BareReading<Thing>,
  exhibits: readonly Exhibit[],
  { part }: Taking,
): Reading => ({
  length,
  exhibits,
  better: better.map((it) => ({ ...it, what: { ...it.what, part } })),
})

const exhibit = (taken: FoundLength, thing: Thing, { part, of, findings }: Taking): Exhibit => ({
  thing,
  part,
  word: 'found',
  asStated: taken.asWritten,
  used: showLength(taken),
  from: { kind: 'inspection', findings, component: of, how: taken.method },
})

function usualWall(material: Material | null, { part }: Taking): Exhibit {
  const { inches, halfWidthInches, of } = wallOf(material)
  return {
    thing: 'usual-wall',
    part,
    word: 'derived',
    asStated: null,
    used: { usual: exactly(inches, 'in'), halfWidth: exactly(halfWidthInches, 'in'), of },
    from: { kind: 'computed' },
  }
}

/** A stated length as a value: what the paper says, to half of its last place. */
export const asStated = (ft: number, halfStepFt: number, cause: string): Uncertain =>
  plus(uncertain(ft, 0, cause), uncertain(0, rectangular(halfStepFt), cause))

/**
 * Width, diameter or depth that a design states: `3 ft` is the width of the bucket or the form and written to the inch, not
 * to the foot (common practice). "About 3 ft", and what is written finer than the foot, is taken as it stands.
 */
export const asDesigned = ({ ft, halfStepFt, approximate }: StatedLength, cause: string): Uncertain =>
  asStated(ft, halfStepFt >= 0.5 && !approximate ? 1 / 24 : halfStepFt, cause)
