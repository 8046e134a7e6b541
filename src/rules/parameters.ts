import type { z } from 'zod'
import { capacityRule } from './values/capacity-rule.ts'
import { compartments } from './values/compartments.ts'
import { designFlow } from './values/design-flow.ts'
import { eraFacts, expectations } from './values/gathered.ts'
import { percTable } from './values/perc-table.ts'
import { protocol } from './values/protocol.ts'
import { pumpOutYears } from './values/pump-out-years.ts'
import { quantity, range } from './values/quantity.ts'
import { requirement } from './values/requirement.ts'
import { roomLeft } from './values/room-left.ts'
import { setbackTable } from './values/setback-table.ts'
import { solidsRules } from './values/solids-rules.ts'
import { submergence } from './values/submergence.ts'
import { textureTable } from './values/texture-table.ts'
import { transferWindow } from './values/transfer-window.ts'

/** The day whose law a parameter answers to. The pack says which; these are the three there are. */
export const GOVERNING_DATES = ['permit-issued', 'installed', 'inspected'] as const
export type GoverningDate = (typeof GOVERNING_DATES)[number]

/**
 * `nearest`: of several layers the nearest one wins and the rest are overridden. `gathered`: every layer's items stand
 * side by side, and a nearer layer replaces only an item of the same id.
 */
export type Layering = 'nearest' | 'gathered'

type Definition = { readonly value: z.ZodType; readonly meaning: string; readonly layering: Layering }

const nearest = <T>(value: z.ZodType<T>, meaning: string) =>
  ({ value, meaning, layering: 'nearest' }) as const satisfies Definition
const gathered = <T>(value: z.ZodType<T>, meaning: string) =>
  ({ value, meaning, layering: 'gathered' }) as const satisfies Definition

/** Every name a pack may use, what it means and what its value looks like. A name not here is a fault in the pack. */
export const PARAMETERS = {
  'tank.minimum-capacity': nearest(capacityRule, 'minimum liquid capacity of the septic tank, US gallons'),
  'tank.minimum-capacity-by-flow': nearest(
    capacityRule,
    'minimum liquid capacity of the tank of a building that is no dwelling, by its design flow, US gallons',
  ),
  'tank.nominal-tolerance-pct': nearest(
    quantity('pct'),
    'how much a tank’s capacity to its outlet invert may differ from its nominal size',
  ),
  'tank.usable-uncertainty-pct': nearest(
    quantity('pct'),
    'expanded uncertainty (k = 2) above which a computed capacity is too rough to decide with',
  ),
  'tank.metal-age-limit-years': nearest(
    quantity('years'),
    'age from which a metal tank is presumed to have failed',
  ),
  'tank.compartments-minimum': nearest(compartments, 'minimum number of compartments or tanks in series'),
  'tank.liquid-depth': nearest(range('in'), 'liquid depth, floor to outlet invert'),
  'tank.freeboard': nearest(range('in'), 'air space from the liquid level to the underside of the cover'),
  'tank.wall-thickness': nearest(range('in'), 'wall of a precast concrete tank'),
  'tank.masonry-accepted': nearest(requirement, 'whether a tank of block, brick or stone is accepted'),
  'inlet.invert-drop': nearest(range('in'), 'height of the inlet invert above the outlet invert'),
  'inlet.submergence': nearest(range('in'), 'depth of the inlet device below the liquid level'),
  'outlet.submergence-pct': nearest(submergence, 'depth of the outlet device, percent of liquid depth'),
  'outlet.submergence-in': nearest(range('in'), 'depth of the outlet device below the liquid level'),
  'outlet.above-liquid': nearest(range('in'), 'height of the outlet device above the liquid level'),
  'effluent-filter.required': nearest(requirement, 'whether an effluent filter is required'),
  'cesspool.accepted': nearest(requirement, 'whether a cesspool is accepted'),
  'pit.room-left': nearest(roomLeft, 'room that has to be left below the inlet of a cesspool or a pit'),
  'privy.accepted': nearest(requirement, 'whether a privy is accepted'),
  'privy.least-room-in': nearest(
    quantity('in'),
    'room that has to be left over the contents of a privy, to the ground or the slab',
  ),
  'design.flow-per-bedroom': nearest(designFlow, 'daily design flow from the bedroom count, gpd'),
  'absorption.perc-table': nearest(
    percTable,
    'absorption area or application rate from a percolation reading',
  ),
  'absorption.nominal-tolerance-pct': nearest(
    quantity('pct'),
    'how much an absorption area as built may differ from the area that was designed',
  ),
  'absorption.texture-table': nearest(textureTable, 'application rate from a soil class or texture'),
  setbacks: nearest(setbackTable, 'least horizontal distances, feet'),
  'setbacks.lender': nearest(
    setbackTable,
    'minimum horizontal distances that a lender’s program requires, feet',
  ),
  'solids.rules': gathered(solidsRules, 'when solids call for pumping: each rule under its own name'),
  'solids.pump-out-years': nearest(pumpOutYears, 'years between pumpings by tank size and people'),
  'level.tolerance-in': nearest(
    quantity('in'),
    'how far the liquid level may lie from the outlet invert and still count as at the invert',
  ),
  'position.record-accuracy-ft': nearest(
    quantity('ft'),
    'limit of error (±) of a location on a record drawing',
  ),
  'position.significance': nearest(
    quantity('fraction'),
    'coverage at which a distance between recorded and found position counts as a difference',
  ),
  'transfer.inspection-window-days': nearest(
    transferWindow,
    'how old an inspection may be at a transfer of property',
  ),
  'inspection.protocol': nearest(protocol, 'what an inspection has to locate, open, see, read, walk and ask'),
  'household.flow-per-person': nearest(quantity('gpd'), 'wastewater that one person makes in a day'),
  'era-facts': gathered(eraFacts, 'what was built, allowed or ended when'),
  expectations: gathered(expectations, 'what is usual where the record is silent; never a record'),
} as const satisfies Record<string, Definition>

export type ParameterName = keyof typeof PARAMETERS
export type ValueOf<Name extends ParameterName> = z.output<(typeof PARAMETERS)[Name]['value']>

export const PARAMETER_NAMES = Object.keys(PARAMETERS) as readonly ParameterName[]
export const isParameterName = (name: string): name is ParameterName => Object.hasOwn(PARAMETERS, name)
