import type {
  Condition,
  LeftOutReason,
  LineDefect,
  LineStart,
  Material,
  NotReachedReason,
  SearchMethod,
  VesselShape,
} from '../catalog/choices.ts'
import type { ComponentKind } from '../catalog/kinds.ts'

/** What a kind of component is called, in the middle of a sentence. */
export const KIND_NOUNS: { readonly [K in ComponentKind | 'system']: string } = {
  system: 'system',
  tank: 'tank',
  'pump-chamber': 'pump chamber',
  'treatment-unit': 'treatment unit',
  'holding-tank': 'holding tank',
  'grease-interceptor': 'grease interceptor',
  'media-filter': 'sand or media filter',
  'disinfection-unit': 'disinfection unit',
  'laundry-system': 'laundry or gray-water system',
  privy: 'privy',
  'straight-pipe': 'straight pipe',
  cesspool: 'cesspool',
  'distribution-box': 'distribution box',
  'building-sewer': 'building sewer',
  'effluent-line': 'effluent line',
  'seepage-pit': 'seepage pit',
  trench: 'trench',
  bed: 'absorption bed',
  chambers: 'chambers',
  mound: 'mound',
  'drip-field': 'drip field',
  'inlet-baffle': 'inlet baffle',
  'outlet-baffle': 'outlet baffle',
  'effluent-filter': 'effluent filter',
  'access-opening': 'access opening',
  riser: 'riser',
  'observation-port': 'observation port',
  well: 'well',
}

/** What it does, for a reader who may not know it by the name it was given. */
export const KIND_ROLES: { readonly [K in ComponentKind | 'system']: string | null } = {
  system: null,
  tank: 'receives sewage',
  'pump-chamber': 'pumps effluent on',
  'treatment-unit': 'treats sewage with air',
  'holding-tank': 'holds sewage until it is pumped',
  'grease-interceptor': 'keeps kitchen grease from the tank',
  'media-filter': 'filters effluent',
  'disinfection-unit': 'disinfects effluent',
  'laundry-system': 'takes wash water past the septic tank',
  privy: 'receives waste without water',
  'straight-pipe': 'carries sewage to the open',
  cesspool: 'receives raw sewage and disperses it into the soil',
  'distribution-box': 'divides the flow',
  'building-sewer': 'carries sewage',
  'effluent-line': 'carries effluent',
  'seepage-pit': 'disperses effluent into the soil',
  trench: 'disperses effluent into the soil',
  bed: 'disperses effluent into the soil',
  chambers: 'disperse effluent into the soil',
  mound: 'disperses effluent into the soil',
  'drip-field': 'disperses effluent into the soil',
  'inlet-baffle': null,
  'outlet-baffle': null,
  'effluent-filter': 'keeps solids from the drainfield',
  'access-opening': null,
  riser: null,
  'observation-port': null,
  well: null,
}

export const MATERIAL_NOUNS: { readonly [M in Material]: string } = {
  concrete: 'concrete',
  'concrete-block': 'concrete block',
  brick: 'brick',
  stone: 'stone',
  steel: 'steel',
  fiberglass: 'fiberglass',
  polyethylene: 'polyethylene',
  wood: 'wood',
  'cast-iron': 'cast iron',
  'ductile-iron': 'ductile iron',
  'vitrified-clay': 'vitrified clay',
  'bituminized-fiber': 'Orangeburg (bituminized fiber)',
  'asbestos-cement': 'asbestos cement',
  pvc: 'PVC',
  abs: 'ABS',
  gravel: 'gravel',
  other: 'another material',
}

export const SHAPE_NOUNS: { readonly [S in VesselShape]: string } = {
  rectangular: 'rectangular',
  'vertical-cylinder': 'vertical cylinder',
  'horizontal-cylinder': 'horizontal cylinder',
  'horizontal-oval': 'horizontal oval',
  'vertical-oval': 'vertical oval',
  sphere: 'sphere',
}

export const CONDITION_WORDS: { readonly [C in Condition]: string } = {
  sound: 'sound',
  worn: 'worn',
  cracked: 'cracked',
  corroded: 'corroded',
  leaking: 'leaking',
  broken: 'broken',
  collapsed: 'collapsed',
  blocked: 'blocked',
}

/** What a camera saw wrong, with its article where it has one. */
export const DEFECT_NOUNS: { readonly [D in LineDefect]: string } = {
  crack: 'a crack',
  break: 'a break',
  collapse: 'a collapse',
  deformation: 'pipe pressed out of round',
  'offset-joint': 'an offset joint',
  'open-joint': 'an open joint',
  'root-intrusion': 'roots',
  sag: 'a sag that holds water',
  corrosion: 'corrosion',
  blockage: 'a blockage',
  leak: 'a leak',
}

/** Where the distances along a line start. */
export const START_NOUNS: { readonly [S in LineStart]: string } = {
  'house-wall': 'the house wall',
  cleanout: 'the cleanout',
  tank: 'the tank',
  'pump-chamber': 'the pump chamber',
  'distribution-box': 'the distribution box',
  'far-end': 'its far end',
}

export const SEARCH_NOUNS: { readonly [M in SearchMethod]: string } = {
  excavation: 'digging',
  probe: 'probing',
  camera: 'camera in the line',
  sonde: 'sonde',
  'metal-detector': 'metal detector',
  'ground-radar': 'ground radar',
  'seen-through-opening': 'looking through the opening',
}

export const NOT_REACHED_WORDS: { readonly [R in NotReachedReason]: string } = {
  buried: 'it is buried too deep',
  'paved-over': 'it is paved over',
  refused: 'access was refused',
  'no-time': 'there was no time',
  unsafe: 'it was unsafe to go on',
  other: 'the firm gives another reason',
}

export const LEFT_OUT_WORDS: { readonly [R in LeftOutReason]: string } = {
  ...NOT_REACHED_WORDS,
  'shut-off': 'water or power was shut off',
  'nobody-to-ask': 'nobody was there to ask',
  'not-stated': 'the report does not say why',
}

const CHOICES: Readonly<Record<string, string>> = {
  ...KIND_NOUNS,
  ...MATERIAL_NOUNS,
  ...SHAPE_NOUNS,
  ...CONDITION_WORDS,
  ...DEFECT_NOUNS,
  'house-wall': 'house wall',
  cleanout: 'cleanout',
  'far-end': 'far end',
  found: 'found',
  'not-found': 'searched for and not found',
  backup: 'sewage backed up into the house',
  'pipe-to-open': 'a straight pipe carries sewage to the open, with no tank and no drainfield',
  discharge: 'sewage discharges where no drainfield takes it',
  surfacing: 'sewage or effluent is on the surface',
  dye: 'dye came to the surface or to water',
  'run-back': 'liquid ran back from the outlet during pumping',
  'wet-ground': 'the ground over the drainfield is wet',
  'lush-ground': 'the ground over the drainfield is unusually green',
  'not-seen': 'not seen',
  works: 'works',
  'does-not-work': 'does not work',
  open: 'open, broken or missing',
  'gives-way': 'a probe goes through it',
  holds: 'holds',
  vehicles: 'vehicles drive or park over the system',
  building: 'a building, a deck or paving stands over the drainfield',
  roots: 'trees or shrubs root in the drainfield',
  'surface-water': 'roof or surface water drains onto the drainfield',
  covered: 'covered',
  'not-covered': 'not covered',
  'in-force': 'in force',
  lapsed: 'lapsed',
  none: 'none',
  secured: 'secured',
  'not-secured': 'not secured',
}

/** A choice from one of our lists in words; what is not of our lists (a soil's name) stands as it is. */
export const choiceWords = (choice: string): string => CHOICES[choice] ?? choice
