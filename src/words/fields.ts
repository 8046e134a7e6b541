import { type CATALOG, fieldAt, type Place, pathOf } from '../catalog/catalog.ts'
import { useOn } from '../catalog/field.ts'
import type { ComponentKind } from '../catalog/kinds.ts'
import { KIND_WORDS } from './field-choices.ts'

export type FieldWords = {
  readonly label: string
  /** Beside the label, in a few words. */
  readonly help?: string
  /** How a person is asked for it, where that is not its label. */
  readonly ask?: string
}

type VariantsOf<F> = F extends { on: readonly (infer U)[] }
  ? U extends { words: infer W extends string }
    ? W
    : never
  : never
type WordsOf<F> = FieldWords &
  (F extends { value: 'group' | 'rows'; parts: infer P } ? { readonly parts: TableOf<P> } : unknown) &
  ([VariantsOf<F>] extends [never] ? unknown : { readonly on: { readonly [W in VariantsOf<F>]: FieldWords } })
type TableOf<Fs> = { readonly [N in keyof Fs]: WordsOf<Fs[N]> }
type Words = { readonly [P in Place]: TableOf<(typeof CATALOG)[P]> }

const REFERENCE: Words['permit']['reference'] = {
  label: 'Reference corners',
  help: 'the two corners of one wall that ties run from; facing it from outside, A is left and B is right',
  parts: {
    a: { label: 'Corner A' },
    b: { label: 'Corner B' },
    baseline: { label: 'Distance from A to B' },
    wall: { label: 'Reference wall' },
    bearingDeg: { label: 'Bearing from A to B', help: 'compass degrees' },
  },
}

const FIX: Words['component']['fix']['parts'] = {
  lat: { label: 'Latitude' },
  lon: { label: 'Longitude' },
  radiusFt: { label: 'Accuracy radius', help: 'feet, as the receiver states it' },
  coverage: { label: 'Share of fixes inside the radius' },
}

/** What every field of the catalog is called, in English. A field without its words does not compile. */
export const FIELD_WORDS: Words = {
  permit: {
    number: { label: 'Permit number' },
    kind: { label: 'Kind of permit' },
    issuedOn: { label: 'Issued on' },
    approvedOn: { label: 'Final approval on', help: 'only an approved permit builds anything' },
    bedrooms: { label: 'Bedrooms', help: 'that the system was designed for' },
    designFlowGpd: { label: 'Design flow', help: 'gallons per day' },
    percRateMpi: { label: 'Perc rate', help: 'minutes per inch' },
    soilTexture: { label: 'Soil', help: 'as the document names it' },
    reference: REFERENCE,
    remarks: { label: 'Remarks' },
  },
  inspection: {
    inspectedOn: { label: 'Inspection date' },
    occupancy: { label: 'Occupancy', ask: 'Does anyone live there?' },
    people: { label: 'People living there' },
    bedroomsCounted: { label: 'Bedrooms', help: 'counted in the house, not from the listing' },
    lastPumpedOn: { label: 'Last pumped on' },
    daysVacant: { label: 'Days vacant', help: 'by the day of the inspection' },
    ground: {
      label: 'Ground over the drainfield',
      ask: 'How does the ground look over the drainfield and around the tank?',
      help: 'the worst you saw',
    },
    notWalkedBecause: { label: 'Reason not walked', ask: 'Why was the ground not walked?' },
    leftOutBecause: {
      label: 'Reason for what was left out',
      ask: 'If a part on record or a question was left out, why?',
    },
    backup: { label: 'Backup into the house', ask: 'Has sewage backed up into the house?' },
    discharge: {
      label: 'Discharge',
      ask: 'Does sewage go anywhere but to the drainfield?',
    },
    runBack: { label: 'Run-back', ask: 'Did liquid run back from the outlet when the tank was pumped?' },
    dye: { label: 'Dye test', ask: 'Did dye come to the surface, a ditch or water?' },
    testVolume: { label: 'Water run in for the test', help: 'gallons; a test needs its volume' },
    testMinutes: { label: 'Minutes of the test' },
    rain: { label: 'Weather of the last days' },
    groundWaterHigh: {
      label: 'High ground water',
      ask: 'Does ground water stand as high as the drainfield?',
    },
    waterUseGpd: { label: 'Metered water use', help: 'gallons a day' },
    disposer: { label: 'Garbage disposer', ask: 'Is there a garbage disposer?' },
    softener: { label: 'Water softener', ask: 'Does a water softener drain into the system?' },
    clearWater: { label: 'Clear water', ask: 'Does a sump, roof or footing drain run into the system?' },
    vehiclesOver: { label: 'Vehicles over it', ask: 'Do vehicles drive or park over the system?' },
    builtOver: { label: 'Built over', ask: 'Does a building, a deck or paving stand over the drainfield?' },
    rootsIn: { label: 'Roots', ask: 'Do trees or shrubs root in the drainfield?' },
    drainsOnto: { label: 'Drains onto it', ask: 'Does roof or surface water drain onto the drainfield?' },
    secondSystem: { label: 'Second system', ask: 'Is there a second septic system on the lot?' },
    servesAnotherLot: {
      label: 'Serves another lot',
      ask: 'Does this system also serve a house or building on another lot?',
    },
    liesOnAnotherLot: {
      label: 'On another lot',
      ask: 'Does part of this system lie on another lot?',
      help: 'as far as you can tell; a survey decides where a line runs',
    },
    reference: REFERENCE,
    cornerA: { label: 'GPS position of corner A', parts: FIX },
    cornerB: { label: 'GPS position of corner B', parts: FIX },
    notes: { label: 'Notes' },
  },
  component: {
    tag: { label: 'Name on the document', help: 'unique within the permit' },
    key: {
      label: 'Key on record',
      help: 'the as-built’s key of this component; none where it is not on record',
    },
    label: { label: 'Name', ask: 'What you call it' },
    kind: { label: 'Kind of component', ask: 'What it is' },
    action: { label: 'What was done' },
    replaces: { label: 'Replaces', help: 'names of the components it takes the place of' },
    material: { label: 'Material' },
    shape: { label: 'Shape' },
    compartments: { label: 'Compartments' },
    count: { label: 'How many alike' },
    pipeDiameter: { label: 'Pipe diameter', help: 'inside' },
    length: {
      label: 'Length',
      on: { inside: { label: 'Inside length' }, each: { label: 'Length', help: 'of each one' } },
    },
    measuredFrom: {
      label: 'Distances measured from',
      ask: 'Where are distances along the line measured from?',
    },
    segments: {
      label: 'Stretches',
      ask: 'If it is of more than one material or size',
      help: 'from one distance to another along the line',
      parts: {
        from: { label: 'From' },
        to: { label: 'To' },
        material: { label: 'Material of this stretch' },
        pipeDiameter: { label: 'Pipe diameter of this stretch' },
      },
    },
    width: {
      label: 'Width',
      on: { inside: { label: 'Inside width' }, each: { label: 'Width', help: 'of each one' } },
    },
    diameter: { label: 'Diameter', on: { inside: { label: 'Inside diameter' } } },
    runs: { label: 'Runs', help: 'its long side, along the reference wall or square to it' },
    liquidDepth: { label: 'Liquid depth', help: 'floor to outlet invert, wherever the liquid stands' },
    insideHeight: { label: 'Inside height', help: 'floor to the underside of the cover' },
    freeboard: { label: 'Freeboard', help: 'outlet invert to the underside of the cover' },
    wallThickness: { label: 'Wall thickness', help: 'if taped along the outside' },
    effectiveDepth: {
      label: 'Effective depth',
      help: 'how much of the wall takes effluent',
      on: {
        sidewall: { label: 'Sidewall depth', help: 'below its inlet' },
        gravel: { label: 'Gravel depth', help: 'below the pipe' },
      },
    },
    capacity: { label: 'Capacity', ask: 'Capacity marked on it', help: 'only if it is stamped or labeled' },
    area: { label: 'Absorption area', help: 'square feet, of all alike together, as stated' },
    depthToTop: { label: 'Depth to the top', help: 'from finished grade down' },
    toWell: { label: 'Distance to the well', help: 'the nearest one' },
    toPublicWell: { label: 'Distance to a public well' },
    toSpring: { label: 'Distance to a drinking-water spring' },
    toBuilding: { label: 'Distance to the house', help: 'or the nearest building with people in it' },
    toPropertyLine: { label: 'Distance to the property line', help: 'the nearest one' },
    toSurfaceWater: { label: 'Distance to surface water', help: 'lake, pond, river or sea' },
    toStream: { label: 'Distance to a stream or ditch' },
    toWetland: { label: 'Distance to a wetland' },
    toWaterLine: { label: 'Distance to the water line', help: 'under pressure' },
    toSuctionLine: { label: 'Distance to a suction line', help: 'from a well to its pump' },
    toPool: { label: 'Distance to a swimming pool' },
    toDrain: { label: 'Distance to a drain', help: 'curtain, footing or storm drain' },
    toCut: { label: 'Distance to a cut or bank' },
    toOtherSystem: { label: 'Distance to another system', help: 'the nearest drainfield of a neighbor' },
    tie: {
      label: 'Ties',
      help: 'distances from corners A and B',
      parts: {
        a: { label: 'Tie from A' },
        b: { label: 'Tie from B' },
        side: { label: 'Side of the wall' },
        sideWords: { label: 'Side, in the words of the document' },
      },
    },
    outcome: { label: 'Outcome', ask: 'Was it found?' },
    searchedBy: { label: 'Searched by', ask: 'How was it searched for?' },
    searchedWithin: { label: 'Searched within', ask: 'How far around' },
    notReachedBecause: { label: 'Reason not reached', ask: 'Why was it not reached?' },
    cameraRun: { label: 'Seen by camera', help: 'length of line' },
    sondeDepth: { label: 'Depth by sonde', help: 'grade down to the line' },
    levelAboveOutlet: { label: 'Liquid level', help: 'against the outlet invert' },
    levelAfterTest: { label: 'Liquid level after the test', help: 'against the same invert' },
    scumThickness: { label: 'Scum thickness' },
    scumBottomBelow: { label: 'Bottom of the scum', help: 'below the liquid’s surface' },
    roomBelowTop: { label: 'Room left', help: 'from the contents up to the ground or the slab' },
    sludgeDepth: { label: 'Sludge depth' },
    outletDeviceBelow: { label: 'Outlet baffle or tee, bottom', help: 'below the outlet invert' },
    outletDeviceAbove: { label: 'Outlet baffle or tee, top', help: 'above the outlet invert' },
    inletDeviceBelow: { label: 'Inlet baffle or tee, bottom', help: 'below the outlet invert' },
    inletAboveOutlet: { label: 'Inlet invert', help: 'against the outlet invert' },
    firstCompartmentLength: { label: 'First compartment', help: 'inside length, if there are two' },
    leftOutBecause: {
      label: 'Reason for what was left out',
      ask: 'If a level, a test or a look was left out, why?',
    },
    opened: { label: 'Opened', ask: 'How far was it opened?' },
    notOpenedBecause: { label: 'Reason not opened', ask: 'Why was the cover not taken off?' },
    levelAboveInlet: { label: 'Liquid level', help: 'against its inlet, or the pipe in the gravel' },
    pumpWorks: { label: 'Pump or blower', ask: 'Does the pump or blower work?' },
    floatsWork: { label: 'Floats', ask: 'Do the floats switch the pump?' },
    timerWorks: { label: 'Timer', ask: 'Does the timer work?' },
    wiringCovered: { label: 'Wiring covered', ask: 'Are all wires and the panel covered?' },
    disinfects: { label: 'Disinfection', ask: 'Does the chlorinator or the lamp work?' },
    serviceContract: { label: 'Service contract' },
    alarmWorks: { label: 'Alarm', ask: 'Does the alarm work?' },
    condition: { label: 'Condition' },
    defects: {
      label: 'Defects along the line',
      ask: 'Defects, and where the camera saw them',
      help: 'at one distance, or from it to another',
      parts: { at: { label: 'At' }, to: { label: 'To, if it goes on' }, seen: { label: 'What you saw' } },
    },
    conditionWords: { label: 'What you saw' },
    lidSecured: { label: 'Cover secured', ask: 'Is the cover secured (locked, bolted or child-resistant)?' },
    coverMissing: { label: 'Open', ask: 'Is it open, or is its cover broken or missing?' },
    topGivesWay: { label: 'Top gives way', ask: 'Does a probe, from the side, go through its top?' },
    riserToGrade: { label: 'Riser to grade', ask: 'Does a riser bring it up to grade?' },
    fix: {
      label: 'GPS position',
      parts: FIX,
    },
    note: { label: 'Note', ask: 'Anything else' },
  },
}

type Entry = FieldWords & {
  readonly parts?: { readonly [part: string]: Entry }
  readonly on?: { readonly [variant: string]: FieldWords }
}

/** The words of a field by its place: `component`, `tie.a`; for a kind of component where that has words of its own. */
export function fieldWords(place: Place, path: string, kind?: ComponentKind): FieldWords {
  const { name, part } = pathOf(path)
  const entry = (FIELD_WORDS[place] as { readonly [name: string]: Entry })[name] ?? { label: path }
  if (part !== undefined) return entry.parts?.[part] ?? entry
  const field = kind === undefined ? undefined : fieldAt(place, name)
  const variant = field && kind !== undefined ? useOn(field, kind)?.words : undefined
  return (variant === undefined ? undefined : entry.on?.[variant]) ?? entry
}

/** A field's label in the middle of a sentence: `effective depth`, `GPS position`. */
export function fieldNoun(place: Place, path: string, kind?: ComponentKind): string {
  const { label } = fieldWords(place, path, kind)
  return /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label
}

/** `Effective depth: how much of the wall takes effluent. Of a seepage pit or cesspool: sidewall depth, below its inlet`. */
export function describedField(at: string): string {
  const [place, ...path] = at.split('.') as [Place, ...string[]]
  const field = fieldAt(place, path.join('.'))
  const own = (field?.on ?? []).filter(({ words }) => words !== undefined)
  return [
    said(fieldWords(place, path.join('.')), ': '),
    ...own.map(({ kinds }) => {
      const { label, ...rest } = fieldWords(place, path.join('.'), kinds[0])
      const named = kinds.map((kind) => KIND_WORDS[kind].toLowerCase()).join(', ')
      return `Of a ${named}: ${said({ ...rest, label: label.toLowerCase() }, ', ')}`
    }),
  ].join('. ')
}

const said = ({ label, help }: FieldWords, between: string): string =>
  help === undefined ? label : `${label}${between}${help}`
