import { type ComponentKind, isAbsorption, isLine } from '../../catalog/kinds.ts'
import type { Extent } from '../../geometry/setback/extent.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'

/** A part as a setback is asked of it: on record, found, or both. */
export type Extended = {
  readonly kind: ComponentKind
  readonly built: AsBuiltComponent | null
  readonly found: FoundComponent | null
}

/** Precast walls, ft: 2½ to 4 in (common practice). They stand outside the inside dimensions. */
const USUAL_WALL = 3.25 / 12
/** Outside of a usual 1,000 to 1,500 gal tank and of a distribution box whose size nobody says, ft (common practice). */
const USUAL_TANK = { length: 10, width: 6 }
const USUAL_BOX = { length: 2, width: 2 }
/** Between trenches and beds that lie side by side, ft, and between pits, in diameters: at the most (common practice). */
const BETWEEN_ROWS = 10
const BETWEEN_PITS = 3

/**
 * How far a part reaches from the point that was tied, by the inspection's readings and, where it has none, by the
 * record's. Which of several alike was tied nobody says, so the others count as lying to either side.
 */
export function extentOf({ kind, built, found }: Extended): Extent {
  const seen = found?.outcome === 'found' ? found : null
  const ft = (name: 'length' | 'width' | 'diameter' | 'wallThickness'): number | null =>
    seen?.[name]?.ft ?? (built ? (statedValue(built.measures[name])?.ft ?? null) : null)
  const count = seen?.count ?? (built ? statedValue(built.measures.count) : null) ?? 1
  const runs = seen?.runs ?? (built ? statedValue(built.measures.runs) : null)
  const bearing = runs === null ? null : runs === 'along-wall' ? 0 : Math.PI / 2
  const [length, width, diameter] = [ft('length'), ft('width'), ft('diameter')]
  if (kind === 'well') return { kind: 'point' }
  // A line bends, and one tie says nothing of the rest of it.
  if (isLine(kind)) return { kind: 'unknown' }
  if (kind === 'seepage-pit' || kind === 'cesspool' || kind === 'laundry-system')
    return diameter === null
      ? { kind: 'unknown' }
      : { kind: 'disc', radius: diameter / 2, beside: (count - 1) * (1 + BETWEEN_PITS) * diameter }
  if (isAbsorption(kind)) {
    if (length === null || width === null) return { kind: 'unknown' }
    return { kind: 'bar', length, width, bearing, beside: (count - 1) * (width + BETWEEN_ROWS) }
  }
  const walls = 2 * (ft('wallThickness') ?? USUAL_WALL)
  if (length === null && diameter !== null) return { kind: 'disc', radius: (diameter + walls) / 2, beside: 0 }
  const across = width ?? diameter
  const usual = kind === 'distribution-box' ? USUAL_BOX : USUAL_TANK
  const [long, wide] =
    length === null || across === null ? [usual.length, usual.width] : [length + walls, across + walls]
  return { kind: 'bar', length: long, width: wide, bearing, beside: 0 }
}
