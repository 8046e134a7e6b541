import { type ComponentKind, isAbsorption, isLine } from '../../../../records/component.ts'
import {
  CAMERA,
  COVER,
  capacity,
  compartments,
  condition,
  conditionWords,
  count,
  DEPTH,
  type Field,
  GROUND,
  INSIDE,
  INVERT,
  length,
  lidSecured,
  material,
  note,
  PIT,
  RULE,
  riserToGrade,
  shape,
} from './fields.ts'

export type Group = { readonly title: string; readonly fields: readonly Field[] }

const depthToTop = length('depthToTop', 'From grade down to its top', COVER)
const lid = [lidSecured, riserToGrade]
const state = (...more: readonly Field[]): Group => ({
  title: 'How it is',
  fields: [condition, conditionWords, ...more],
})

/** Two ties and a fix place anything; each is asked for in its own order in `view/place.ts`. */
export const PLACE_FIELDS: readonly Field[] = [
  length('tie.a', 'Tie from A', GROUND),
  length('tie.b', 'Tie from B', GROUND),
]

const inside: Group = {
  title: 'Inside, to the outlet',
  fields: [
    length('length', 'Inside length', INSIDE),
    length('width', 'Inside width', INSIDE),
    length('diameter', 'Inside diameter', INSIDE),
    length('liquidDepth', 'Liquid depth', DEPTH, 'floor to outlet invert, wherever the liquid stands'),
    length('insideHeight', 'Inside height', INSIDE, 'floor to the underside of the cover'),
    length('wallThickness', 'Wall thickness', RULE, 'if taped along the outside'),
    capacity,
  ],
}

const solids: Group = {
  title: 'Level and solids, before pumping',
  fields: [
    { name: 'levelAboveOutlet', label: 'Liquid against the outlet invert', as: 'level', ways: INVERT },
    length('scumThickness', 'Scum', DEPTH, 'thickness'),
    length('scumBottomBelow', 'Bottom of the scum', DEPTH, 'below the liquid’s surface'),
    length('sludgeDepth', 'Sludge', DEPTH, 'depth'),
    length('outletDeviceBelow', 'Outlet baffle or tee reaches down', INVERT, 'below the outlet invert'),
    length('outletDeviceAbove', 'and stands up', INVERT, 'above the outlet invert'),
  ],
}

const TANK_MATERIALS = ['concrete', 'concrete-block', 'steel', 'polyethylene', 'fiberglass', 'brick'] as const
const PIPE_MATERIALS = [
  'pvc',
  'abs',
  'cast-iron',
  'vitrified-clay',
  'bituminized-fiber',
  'asbestos-cement',
] as const
const BAFFLE_MATERIALS = ['pvc', 'concrete', 'vitrified-clay', 'abs', 'cast-iron', 'polyethylene'] as const
const PIT_MATERIALS = ['concrete-block', 'concrete', 'brick', 'stone', 'gravel', 'wood'] as const
const what = (...fields: readonly Field[]): Group => ({ title: 'What it is', fields })

const vessel: readonly Group[] = [
  what(material(...TANK_MATERIALS), shape, compartments),
  inside,
  solids,
  state(...lid, depthToTop),
]
const line: readonly Group[] = [
  what(
    material(...PIPE_MATERIALS),
    length('pipeDiameter', 'Pipe diameter', RULE, 'inside'),
    length('length', 'Length', GROUND),
    length('cameraRun', 'Seen by camera', CAMERA, 'length of line'),
    length('sondeDepth', 'Depth by sonde', GROUND, 'grade down to the line'),
    depthToTop,
  ),
  state(),
]
const pit: readonly Group[] = [
  what(
    material(...PIT_MATERIALS),
    length('diameter', 'Diameter', PIT),
    length('effectiveDepth', 'Effective depth', PIT, 'below its inlet'),
    count,
  ),
  state(lidSecured, depthToTop),
]
const field: readonly Group[] = [
  what(
    count,
    length('length', 'Length', GROUND, 'of one'),
    length('width', 'Width', GROUND, 'of one'),
    length('effectiveDepth', 'Effective depth', PIT, 'gravel below the pipe'),
    material('gravel', 'polyethylene'),
  ),
  state(depthToTop),
]
const baffle: readonly Group[] = [what(material(...BAFFLE_MATERIALS)), state()]
const opening: readonly Group[] = [
  what(material('concrete', 'polyethylene', 'pvc'), length('diameter', 'Diameter', RULE)),
  state(...lid, depthToTop),
]
const box: readonly Group[] = [
  what(
    material('concrete', 'polyethylene'),
    length('length', 'Length', INSIDE),
    length('width', 'Width', INSIDE),
  ),
  state(lidSecured, depthToTop),
]

const BY_KIND: { readonly [K in ComponentKind]?: readonly Group[] } = {
  tank: vessel,
  'pump-chamber': vessel,
  cesspool: pit,
  'distribution-box': box,
  'inlet-baffle': baffle,
  'outlet-baffle': baffle,
  'effluent-filter': [state()],
  'access-opening': opening,
  riser: opening,
  'observation-port': [what(material('pvc', 'cast-iron')), state(lidSecured)],
  well: [state()],
}

/** What is asked of a thing that was found, by its kind, in the order in which one meets it. */
export function groupsFor(kind: ComponentKind): readonly Group[] {
  const own = BY_KIND[kind]
  if (own) return own
  if (isLine(kind)) return line
  return isAbsorption(kind) && kind !== 'seepage-pit' ? field : pit
}

export const LAST_FIELD = note

/** Every field that any kind is asked for, by name; the first wording wins. */
export const ALL_FIELDS: ReadonlyMap<string, Field> = new Map(
  [
    ...vessel,
    ...line,
    ...pit,
    ...field,
    ...baffle,
    ...opening,
    ...box,
    { title: '', fields: [...PLACE_FIELDS, note] },
  ]
    .flatMap(({ fields }) => fields)
    .reverse()
    .map((it) => [it.name, it] as const),
)

/** Whether opening it lets a person fall in, breathe gas or break through: where the cautions stand above the form. */
export const isOpened = (kind: ComponentKind): boolean =>
  !['building-sewer', 'effluent-line', 'well'].includes(kind)
