import type { PlainDate } from '../base/plain-date.ts'
import { blankOf } from '../catalog/blank.ts'
import { FOUND_FIELDS } from '../catalog/catalog.ts'
import type { DistanceName } from '../catalog/distances.ts'
import { INSPECTION_FIELDS } from '../catalog/inspection-fields.ts'
import { isAbsorption, isLine } from '../catalog/kinds.ts'
import { plausibleDimensions } from '../geometry/volume/plausible-dimensions.ts'
import type { Method } from '../measure/methods.ts'
import type { StatedLength } from '../measure/parse/length.ts'
import { ALWAYS_THERE, KEPT_FROM, KEPT_FROM_NAMES } from '../reconcile/kept-from.ts'
import type { AsBuilt, AsBuiltComponent } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'
import type { FoundLength } from '../records/quantity.ts'

const taken = (ft: number, method: Method): FoundLength => ({
  ft,
  halfStepFt: 1 / 24,
  asWritten: `${ft} ft`,
  method,
  instrument: method,
})

const like = (stated: StatedLength | null, usual: number | null, method: Method): FoundLength | null =>
  stated ? taken(stated.ft, method) : usual === null ? null : taken(usual, method)

/**
 * The inspection that finds everything as recorded and measures all there is to measure, each in the usual way. Nobody made
 * it: it serves to ask which questions one measurement decides, by leaving that measurement out.
 */
export function hypotheticalInspection(asBuilt: AsBuilt, on: PlainDate): FindingsRecord {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const reference =
    serving.map(({ reference }) => statedValue(reference)).find((known) => known !== null) ?? null
  return {
    ...blankOf(INSPECTION_FIELDS),
    inspectedOn: on,
    occupancy: 'occupied',
    bedroomsCounted: statedValue(asBuilt.bedrooms) ?? 3,
    reference: reference && { ...reference, baseline: like(reference.baseline, 30, 'ground-tape') },
    components: serving.map((built) => asFound(built)),
  }
}

function asFound(built: AsBuiltComponent): FoundComponent {
  const { measures } = built
  const usual = usualInside(built)
  const tie = statedValue(measures.tie)
  const absorbs = isAbsorption(built.kind)
  const tank = built.kind === 'tank'
  const inside = (name: 'length' | 'width' | 'diameter', fallback: number | null) =>
    like(statedValue(measures[name]), fallback, absorbs ? 'ground-tape' : 'inside-tape')
  return {
    ...blankOf(FOUND_FIELDS),
    key: built.key,
    label: `${built.label}`,
    kind: built.kind,
    outcome: 'found',
    searchedBy: ['excavation'],
    shape: statedValue(measures.shape),
    length: inside('length', usual?.length ?? (absorbs ? 50 : null)),
    width: inside('width', usual?.width ?? (absorbs && built.kind !== 'seepage-pit' ? 3 : null)),
    diameter: inside('diameter', built.kind === 'seepage-pit' ? 6 : null),
    liquidDepth: like(statedValue(measures.liquidDepth), usual?.depth ?? null, 'sounding-rod'),
    insideHeight: like(statedValue(measures.insideHeight), null, 'inside-tape'),
    effectiveDepth: absorbs ? like(statedValue(measures.effectiveDepth), 6, 'probe') : null,
    pipeDiameter: isLine(built.kind) ? like(statedValue(measures.pipeDiameter), 4 / 12, 'rigid-rule') : null,
    compartments: statedValue(measures.compartments),
    count: statedValue(measures.count),
    material: statedValue(measures.material) ?? 'concrete',
    tie: tie && {
      ...tie,
      a: taken(tie.a.ft, 'ground-tape'),
      b: taken(tie.b.ft, 'ground-tape'),
      side: tie.side ?? 'away',
    },
    ...distancesOf(built),
    condition: 'sound',
    levelAboveOutlet: tank ? taken(0, 'liquid-level-rule') : null,
    scumThickness: tank ? taken(0.25, 'sounding-rod') : null,
    scumBottomBelow: tank ? taken(0.15, 'sounding-rod') : null,
    sludgeDepth: tank ? taken(0.5, 'sounding-rod') : null,
    outletDeviceBelow: tank ? taken(1.5, 'liquid-level-rule') : null,
    outletDeviceAbove: tank ? taken(0.5, 'liquid-level-rule') : null,
    lidSecured: tank ? true : null,
    cameraRun: isLine(built.kind) ? taken(30, 'ground-tape') : null,
  }
}

/** Dimensions to measure where the record gives only the size a tank was sold under. */
function usualInside({
  kind,
  measures,
}: AsBuiltComponent): { length: number; width: number; depth: number } | null {
  const capacity = statedValue(measures.capacity)
  if (kind !== 'tank' || statedValue(measures.diameter)) return null
  const plausible = plausibleDimensions(capacity?.gal ?? 1000)
  const first = plausible.ok ? plausible.value.value[0] : undefined
  return first
    ? { length: first.lengthFt.from, width: first.widthFt.to, depth: first.liquidDepthFt.from }
    : null
}

/**
 * What the record gives is taped again. A property line is always there to be taped to; of what a lot may not have, nothing
 * is supposed.
 */
const distancesOf = ({ kind, measures }: AsBuiltComponent): Pick<FoundComponent, DistanceName> =>
  Object.fromEntries(
    KEPT_FROM_NAMES.map((from) => {
      const { field } = KEPT_FROM[from]
      const usual = ALWAYS_THERE.includes(from) && (kind === 'tank' || isAbsorption(kind)) ? FAR : null
      return [field, like(statedValue(measures[field]), usual, 'ground-tape')]
    }),
  ) as Pick<FoundComponent, DistanceName>

/** Farther than any table requires of a property line, ft. */
const FAR = 30
