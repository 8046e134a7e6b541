import { minus, over, scale, type Uncertain } from '../../measure/uncertain.ts'
import type { FoundComponent } from '../../records/findings.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { InForce } from '../../rules/in-force.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import type { Range } from '../../rules/values/quantity.ts'
import type { Construction } from '../construction.ts'
import { type OnOccasion, ruleDay, type Tank } from '../occasion.ts'
import type { Exhibit } from '../outcome.ts'
import { exactly } from '../quantity.ts'
import { type Reading, reading } from './found-length.ts'

/** One fact of how a tank is built, as read, and the band that a rule requires of it. */
export type BuiltAs = OnOccasion &
  Tank & {
    readonly construction: Construction
    readonly as: Uncertain
    readonly exhibits: readonly Exhibit[]
    readonly rule: Cited
  }
type Answered = Extract<InForce<ParameterName>, { readonly state: 'in-force' }>
type Cited = Omit<Answered, 'value'> & { readonly value: Range<string> }
type Read = { readonly as: Uncertain; readonly exhibits: readonly Exhibit[] }
type Taken = (name: keyof typeof FROM) => Reading | null

const FROM = {
  liquidDepth: 'liquid-depth-to-invert',
  insideHeight: 'insideHeight',
  freeboard: 'freeboard',
  wallThickness: 'wallThickness',
  inletAboveOutlet: 'inletAboveOutlet',
  inletDeviceBelow: 'inletDeviceBelow',
  outletDeviceBelow: 'outletDeviceBelow',
  outletDeviceAbove: 'outletDeviceAbove',
} as const satisfies { readonly [N in keyof FoundComponent]?: string }

const inches = (read: Reading | null): Read | null =>
  read && { as: scale(read.length, 12), exhibits: read.exhibits }

const PRECAST: readonly (string | null)[] = ['concrete', null]

/** What each rule is asked of: null where nobody took what it needs. */
const READ: {
  readonly [C in Construction]: {
    readonly rule: ParameterName
    readonly read: (taken: Taken, found: FoundComponent) => Read | null
  }
} = {
  'liquid-depth': { rule: 'tank.liquid-depth', read: (taken) => inches(taken('liquidDepth')) },
  freeboard: {
    rule: 'tank.freeboard',
    read: (taken) => inches(taken('freeboard')) ?? less(taken('insideHeight'), taken('liquidDepth')),
  },
  wall: {
    rule: 'tank.wall-thickness',
    read: (taken, { material }) => (PRECAST.includes(material) ? inches(taken('wallThickness')) : null),
  },
  'invert-drop': { rule: 'inlet.invert-drop', read: (taken) => inches(taken('inletAboveOutlet')) },
  'inlet-below': { rule: 'inlet.submergence', read: (taken) => inches(taken('inletDeviceBelow')) },
  'outlet-below': { rule: 'outlet.submergence-in', read: (taken) => inches(taken('outletDeviceBelow')) },
  'outlet-share': {
    rule: 'outlet.submergence-pct',
    read: (taken) => share(taken('outletDeviceBelow'), taken('liquidDepth')),
  },
  'outlet-above': { rule: 'outlet.above-liquid', read: (taken) => inches(taken('outletDeviceAbove')) },
}

/** Every rule on how a tank is built that holds on the day asked for, where the inspection took what it needs. */
export function builtAs(tank: Tank & OnOccasion): readonly BuiltAs[] {
  const { found, given } = tank
  const day = ruleDay(tank)
  if (day === null) return []
  const taken: Taken = (name) => {
    const length = found[name] as FoundLength | null | undefined
    if (!length) return null
    const taking = {
      part: tank.part,
      of: found.label,
      findings: given.findings?.id ?? '',
      alone: () => false,
    }
    return reading(length, FROM[name], taking)
  }
  return (Object.keys(READ) as Construction[]).flatMap((construction) => {
    const { rule: name, read } = READ[construction]
    const rule = inForceThroughout(given.book, given.county, name, day)
    if (rule.state !== 'in-force') return []
    const it = read(taken, found)
    return it ? [{ ...tank, ...it, construction, rule: banded(rule, found) }] : []
  })
}

/** A share of the liquid depth has a band for upright walls and may have another for a lying cylinder. */
function banded(rule: Answered, found: FoundComponent): Cited {
  const value = rule.value as
    | Range<string>
    | { verticalWalls: Range<string>; horizontalCylinder: Range<string> | null }
  if (!('verticalWalls' in value)) return { ...rule, value }
  const lying = found.shape === 'horizontal-cylinder' || found.shape === 'horizontal-oval'
  return { ...rule, value: (lying ? value.horizontalCylinder : null) ?? value.verticalWalls }
}

const less = (a: Reading | null, b: Reading | null): Read | null =>
  a && b && { as: scale(minus(a.length, b.length), 12), exhibits: [...a.exhibits, ...b.exhibits] }

const share = (a: Reading | null, b: Reading | null): Read | null =>
  a && b && b.length.value > 0
    ? { as: scale(over(a.length, b.length), 100), exhibits: [...a.exhibits, ...b.exhibits] }
    : null

/** The ends of a band as an answer shows them. */
export const ends = ({ unit, atLeast, moreThan, atMost, lessThan }: Range<string>) => {
  const of = (value: number | null) => (value === null ? null : exactly(value, unit === 'pct' ? '%' : 'in'))
  return { low: of(atLeast ?? moreThan), high: of(atMost ?? lessThan) }
}
