import { halfWidthFt, insideFromOutside, measuredLength, rectangular } from '../../measure/measured-length.ts'
import { type HalfWidth, METHODS, type Method, type MethodPreset } from '../../measure/methods.ts'
import { printLength } from '../../measure/print/length.ts'
import type { BetterMeasurement } from '../../measure/settling-measurement.ts'
import { plus, type Uncertain, uncertain } from '../../measure/uncertain.ts'
import type { Material } from '../../records/component.ts'
import { the } from '../../records/naming.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { Exhibit } from '../outcome.ts'

/** A reading with its uncertainty, its exhibit, and how it could be taken better. */
export type Reading = {
  readonly length: Uncertain
  readonly exhibits: readonly Exhibit[]
  readonly better: readonly BetterMeasurement[]
}

/** Whose readings they are, and whether a reading is the only one by its instrument. */
export type Taking = {
  readonly of: string
  readonly findings: string
  readonly alone: (taken: FoundLength) => boolean
}

/** Readings by one instrument share its error; each reading has an error of its own, named after what was read. */
const instrumentCause = (taken: FoundLength): string => `instrument: ${taken.instrument}`
const readingCause = (of: string, name: string): string => `reading: ${name} of ${of}`

export function reading(taken: FoundLength, name: string, { of, findings, alone }: Taking): Reading {
  const length = measuredLength(taken.ft, taken.method, instrumentCause(taken), readingCause(of, name), {
    halfStepFt: taken.halfStepFt,
  })
  return {
    length,
    exhibits: [
      {
        what: `${name} of ${of}`,
        word: 'found',
        asStated: taken.asWritten,
        asUsed: printLength(taken.ft),
        from: { kind: 'inspection', findings, component: of, how: METHODS[taken.method].says },
      },
    ],
    better: betterThan(taken, name, of, alone(taken)),
  }
}

/** A tape along the outside and a probe pushed down beside it both meet the outer face of the wall. */
const OVER_THE_OUTSIDE: readonly Method[] = ['outside-tape', 'probe']

/** Inside length from a reading over the outside: the walls come off, as measured or, unmeasured, as is usual. */
export function insideReading(
  taken: FoundLength,
  { thickness, material }: { readonly thickness: FoundLength | null; readonly material: Material | null },
  name: string,
  taking: Taking,
): Reading {
  const outside = reading(taken, name, taking)
  if (!OVER_THE_OUTSIDE.includes(taken.method)) return outside
  const walls = thickness ? reading(thickness, 'wall thickness', taking) : usualWall(taking.of, material)
  return {
    length: insideFromOutside(outside.length, walls.length),
    exhibits: [...outside.exhibits, ...walls.exhibits],
    better: [...outside.better, ...walls.better],
  }
}

type Wall = { readonly inches: number; readonly halfWidthInches: number; readonly of: string }

/** Precast walls run from 2½ in, the least in Pennsylvania's and Tennessee's rules, to about 4 in (common practice). */
const PRECAST: Wall = { inches: 3.25, halfWidthInches: 0.75, of: 'a precast wall' }
/** Metal and plastic shells are between about an eighth and three eighths of an inch (common practice). */
const SHELL: Wall = { inches: 0.25, halfWidthInches: 0.125, of: 'a thin shell' }
/** Blocks and bricks laid in one thickness: 8-inch block is 7⅝ in, and 6-inch block was used too (common practice). */
const MASONRY: Wall = { inches: 7, halfWidthInches: 1.5, of: 'a laid-up wall' }

const USUAL_WALL: { readonly [M in Material]?: Wall } = {
  steel: SHELL,
  fiberglass: SHELL,
  polyethylene: SHELL,
  'concrete-block': MASONRY,
  brick: MASONRY,
}

function usualWall(of: string, material: Material | null): Reading {
  const wall = (material && USUAL_WALL[material]) ?? PRECAST
  const cause = readingCause(of, 'wall thickness')
  const u = rectangular(wall.halfWidthInches / 12)
  return {
    length: uncertain(wall.inches / 12, u, cause),
    exhibits: [
      {
        what: `wall thickness of ${of}`,
        word: 'derived',
        asStated: 'not measured',
        asUsed: `${wall.inches} in ± ${wall.halfWidthInches} in, usual for ${wall.of} (common practice)`,
        from: { kind: 'computed' },
      },
    ],
    better: [
      {
        what: `measure the wall thickness of ${the(of)} at an opening with a rule`,
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

/** An instrument that other readings share stays in the budget: replacing one reading does not mend the others. */
function betterThan(
  taken: FoundLength,
  name: string,
  of: string,
  alone: boolean,
): readonly BetterMeasurement[] {
  const method = BETTER[taken.method]
  if (!method) return []
  const [now, then]: [MethodPreset, MethodPreset] = [METHODS[taken.method], METHODS[method]]
  const own = (half: HalfWidth) => rectangular(halfWidthFt(half, taken.ft))
  const replaces = [
    {
      cause: readingCause(of, name),
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
  return [{ what: `measure the ${name} of ${the(of)} again: ${then.says}`, replaces }]
}

/** A stated length as a value: what the paper says, to half of its last place. */
export const asStated = (ft: number, halfStepFt: number, cause: string): Uncertain =>
  plus(uncertain(ft, 0, cause), uncertain(0, rectangular(halfStepFt), cause))
