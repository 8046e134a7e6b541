import type { Condition, LineDefect, LineStart } from '../../catalog/choices.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import type { OpenPart } from '../../reconcile/detail.ts'
import type { Device } from '../../reconcile/devices.ts'
import type { KeptFrom } from '../../reconcile/kept-from.ts'
import type { Sign } from '../../reconcile/reason.ts'
import type { OpenItem } from '../../reconcile/status.ts'
import type { OurText } from '../../records/whose.ts'
import type { Step } from '../../rules/values/protocol.ts'
import type { Existing } from '../../rules/values/requirement.ts'
import { ours, oursCapital } from '../ours.ts'

export const NOUNS: { readonly [K in ComponentKind | 'system']: OurText } = {
  system: ours`septic system`,
  tank: ours`septic tank`,
  'pump-chamber': ours`pump chamber`,
  'treatment-unit': ours`aerobic treatment unit`,
  'holding-tank': ours`holding tank`,
  'grease-interceptor': ours`grease trap`,
  'media-filter': ours`sand filter`,
  'disinfection-unit': ours`disinfection unit`,
  'laundry-system': ours`laundry drain pit`,
  privy: ours`outhouse`,
  'straight-pipe': ours`straight pipe`,
  cesspool: ours`cesspool`,
  'distribution-box': ours`distribution box`,
  'building-sewer': ours`sewer line from the house`,
  'effluent-line': ours`line to the drainfield`,
  'seepage-pit': ours`seepage pit`,
  trench: ours`drainfield trench`,
  bed: ours`drainfield bed`,
  chambers: ours`drainfield chamber`,
  mound: ours`mound`,
  'drip-field': ours`drip field`,
  'inlet-baffle': ours`inlet baffle of the tank`,
  'outlet-baffle': ours`outlet baffle of the tank`,
  'effluent-filter': ours`outlet filter of the tank`,
  'access-opening': ours`opening of the tank`,
  riser: ours`riser of the tank`,
  'observation-port': ours`observation port`,
  well: ours`well`,
}

export const name = ({ kind, mark }: OpenPart): OurText =>
  mark === null ? NOUNS[kind] : ours`${NOUNS[kind]} ${mark}`
export const the = (part: OpenPart): OurText => (part.mark === null ? ours`the ${name(part)}` : name(part))
export const The = (part: OpenPart): OurText => oursCapital(the(part))
/** Those whose noun begins with a vowel. */
export const AN: readonly OpenPart['kind'][] = [
  'inlet-baffle',
  'outlet-baffle',
  'effluent-filter',
  'access-opening',
  'observation-port',
  'treatment-unit',
]
export const a = ({ kind }: OpenPart): OurText =>
  AN.includes(kind) ? ours`an ${NOUNS[kind]}` : ours`a ${NOUNS[kind]}`

export const CONDITIONS: { readonly [C in Condition]: OurText } = {
  sound: ours`sound`,
  worn: ours`worn`,
  cracked: ours`cracked`,
  corroded: ours`rusted or eaten away`,
  leaking: ours`leaking`,
  broken: ours`broken`,
  collapsed: ours`collapsed`,
  blocked: ours`blocked`,
}

export const DEFECTS: { readonly [D in LineDefect]: OurText } = {
  crack: ours`a crack`,
  break: ours`a break`,
  collapse: ours`a collapse`,
  deformation: ours`a squeezed pipe`,
  'offset-joint': ours`a joint out of line`,
  'open-joint': ours`an open joint`,
  'root-intrusion': ours`roots`,
  sag: ours`a sag that holds water`,
  corrosion: ours`rust`,
  blockage: ours`a blockage`,
  leak: ours`a leak`,
}

const STARTS: { readonly [S in LineStart]: OurText } = {
  'house-wall': ours`the house wall`,
  cleanout: ours`the cleanout`,
  tank: ours`the tank`,
  'pump-chamber': ours`the pump chamber`,
  'distribution-box': ours`the distribution box`,
  'far-end': ours`its far end`,
}

/** Where along a line: `from 31 to 60 feet from the house wall`. */
export function along({ from, to, start }: NonNullable<OpenItem['detail']['stretch']>): OurText {
  const since = start === null ? ours`along the line` : ours`from ${STARTS[start]}`
  const [a, b] = [whole(from), to === null ? null : whole(to)]
  return b === null ? ours`${a} feet ${since}` : ours`${a} to ${b} feet ${since}`
}
const whole = (ft: number): number => Math.round(ft)

export const required = ({ detail: { source } }: OpenItem): OurText =>
  source === 'from-memory' ? ours`may have required` : ours`required`

export const SIGNS: { readonly [S in Sign]: OurText } = {
  backup: ours`Sewage has backed up into the house.`,
  'pipe-to-open': ours`A pipe carries raw sewage out into the open. There is no tank and no drainfield.`,
  discharge: ours`Sewage goes onto the ground, into a ditch or into water.`,
  surfacing: ours`Sewage or wastewater is on the ground. It can make people sick.`,
  dye: ours`Dye from the house came out on the ground or in water.`,
  'run-back': ours`Wastewater ran back into the tank when it was pumped. The drainfield is full.`,
  'wet-ground': ours`The ground over the drainfield is wet.`,
  'lush-ground': ours`The grass over the drainfield is much greener than the rest.`,
}

export const BUILT: { readonly [B in NonNullable<OpenItem['detail']['built']>]: OurText } = {
  'liquid-depth': ours`The depth of liquid in the tank is`,
  freeboard: ours`The air space in the tank is`,
  wall: ours`The wall of the tank is`,
  'invert-drop': ours`The drop from the inlet to the outlet is`,
  'inlet-below': ours`The depth of the inlet baffle is`,
  'outlet-below': ours`The depth of the outlet baffle is`,
  'outlet-share': ours`The depth of the outlet baffle is`,
  'outlet-above': ours`The height of the outlet baffle is`,
  compartments: ours`The compartments of the tank are`,
  cesspool: ours`The cesspool is`,
  privy: ours`The outhouse is`,
  'masonry-tank': ours`The tank is`,
}

/** What becomes of one that is there already. */
export const EXISTING: { readonly [E in Existing]: OurText } = {
  'until-it-fails': ours`This one may stay until it fails.`,
  'replace-at-transfer': ours`This one must be replaced when the property is sold.`,
  hazard: ours`The rule calls it a hazard.`,
}

export const BURDENS: { readonly [B in NonNullable<OpenItem['detail']['burden']>]: OurText } = {
  vehicles: ours`Cars or trucks drive or park over the system.`,
  building: ours`Something is built over the drainfield.`,
  roots: ours`Tree roots grow in the drainfield.`,
  'surface-water': ours`Roof or surface water runs onto the drainfield.`,
  disposer: ours`The tank is too small for a house with a garbage disposer.`,
  'clear-water': ours`Rain or ground water from a drain or sump runs into the system.`,
  'water-use': ours`The house uses more water than the system was designed for.`,
}

/** What parts keep away from. */
export const KEPT_FROM: { readonly [K in KeptFrom]: OurText } = {
  well: ours`the well`,
  'public-well': ours`the public well`,
  spring: ours`the spring`,
  building: ours`the house`,
  'property-line': ours`the property line`,
  'surface-water': ours`open water`,
  stream: ours`a stream or ditch`,
  wetland: ours`a wetland`,
  'water-line': ours`the water line`,
  'suction-line': ours`the well’s pump line`,
  pool: ours`the swimming pool`,
  drain: ours`a drain`,
  cut: ours`a bank`,
  'other-system': ours`a neighbor’s drainfield`,
}

export const near = ({ detail: { nearTo } }: OpenItem): OurText => KEPT_FROM[nearTo ?? 'well']

/** What is tested by itself, where it does not work. */
export const FAILED: { readonly [D in Device]: (part: OpenPart) => OurText } = {
  pump: (part) => ours`The pump or blower of ${the(part)} does not work.`,
  alarm: (part) => ours`The alarm of ${the(part)} does not work.`,
  floats: (part) => ours`The floats of ${the(part)} do not switch the pump.`,
  timer: (part) => ours`The timer of ${the(part)} does not work.`,
  wiring: (part) => ours`Bare wires were seen at ${the(part)}. They can kill.`,
  disinfection: (part) => ours`${The(part)} does not clean the water as it must.`,
}

/** What an inspection left out, in a short sentence. */
export function leftOut(part: OpenPart, step: Step): OurText {
  switch (step) {
    case 'locate':
      return ours`The inspector did not locate ${the(part)}.`
    case 'open':
      return ours`The cover of ${the(part)} was not taken off.`
    case 'read-level':
      return ours`The liquid level in ${the(part)} was not read.`
    case 'see-outlet-device':
      return ours`The outlet baffle was not looked at.`
    case 'check-cover':
      return ours`The cover of ${the(part)} was not checked.`
    case 'test-pump':
      return ours`The pump or blower of ${the(part)} was not tested.`
    case 'test-alarm':
      return ours`The alarm of ${the(part)} was not tested.`
    case 'test-floats':
      return ours`The floats of ${the(part)} were not tested.`
    case 'check-wiring':
      return ours`The wires at ${the(part)} were not looked at.`
    case 'test-disinfection':
      return ours`${The(part)} was not tested.`
    case 'ask-contract':
      return ours`Nobody asked who keeps ${the(part)} working.`
    case 'walk-ground':
      return ours`The ground over the drainfield was not walked.`
    case 'count-bedrooms':
      return ours`The bedrooms were not counted.`
    case 'ask-occupancy':
      return ours`Nobody asked who lives there.`
    case 'ask-pumping':
      return ours`Nobody asked when the tank was last pumped.`
    case 'ask-backup':
      return ours`Nobody asked if sewage ever came up in the house.`
    case 'locate-outflow':
      return ours`Nobody found where the water from the tank goes.`
    case 'run-water':
      return ours`The house stood empty, and no water was run to test the system.`
  }
}
