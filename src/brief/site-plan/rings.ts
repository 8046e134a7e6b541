import { isAbsorption } from '../../catalog/kinds.ts'
import { type Extent, separation } from '../../geometry/setback/extent.ts'
import type { Case } from '../../reconcile/case.ts'
import { permitDate } from '../../reconcile/case.ts'
import { extentOf } from '../../reconcile/facts/extent.ts'
import { requiredSetback } from '../../rules/apply/required-setback.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import type { Mark } from './mark.ts'

type Spot = { readonly x: number; readonly y: number }

/** How far from a well the rule of a part's day keeps it: a ring of that radius, and what it is for. */
export type Ring = Spot & { readonly well: string; readonly ft: number; readonly keepsOut: readonly string[] }

/** A part that lies within its ring: from the nearest place it may have, to the well. */
export type Within = {
  readonly label: string
  readonly well: string
  readonly from: Spot
  readonly to: Spot
  readonly distanceFt: number
  readonly ft: number
}

type Ruled = Pick<Case, 'pairings'> & Partial<Pick<Case, 'book' | 'county'>>

/** The setbacks that matter on a plan: those of what is placed on it. Without the rules at hand there are none. */
export function setbackRings(
  { pairings, book, county }: Ruled,
  marks: readonly Mark[],
): { readonly rings: readonly Ring[]; readonly within: readonly Within[] } {
  const rings = new Map<string, Ring>()
  const within: Within[] = []
  if (!book || !county) return { rings: [], within }
  const wells = bestMarks(marks.filter(({ kind }) => kind === 'well'))
  for (const { built, found } of pairings) {
    const day = permitDate(built)
    const kind = built.kind === 'tank' ? 'tank' : isAbsorption(built.kind) ? built.kind : null
    const places = bestMarks(marks.filter(({ label, kind }) => label === built.label && kind === built.kind))
    if (kind === null || day === null || places.length === 0) continue
    const table = inForceThroughout(book, county, 'setbacks', day)
    if (table.state !== 'in-force') continue
    const required = requiredSetback(table, kind, 'private-well')
    if (!required.ok) continue
    const { ft } = required.value.value
    for (const well of wells) {
      const id = `${well.label} ${well.x} ${well.y} ${ft}`
      const keepsOut = [...(rings.get(id)?.keepsOut ?? []), built.label]
      rings.set(id, { x: well.x, y: well.y, well: well.label, ft, keepsOut })
    }
    const extent = extentOf({ kind: built.kind, built, found })
    const pairs = wells.flatMap((to) =>
      places.map((from) => ({ from, to, distanceFt: fromItsEdge(from, extent, to) })),
    )
    const [nearest] = pairs.sort((a, b) => a.distanceFt - b.distanceFt)
    if (nearest && nearest.distanceFt < ft)
      within.push({ label: built.label, well: nearest.to.label, ft, ...nearest })
  }
  return { rings: [...rings.values()], within }
}

/** From its edge as far as its size is known, as the setback is asked; else from where it was tied. */
function fromItsEdge(from: Mark, extent: Extent, to: Mark): number {
  const { nearest, farthest } = separation(
    { at: [from.x, from.y], extent },
    { at: [to.x, to.y], extent: { kind: 'point' } },
  )
  return extent.kind === 'unknown' ? farthest : nearest
}

/** Where each thing was found; where it is on record if it was not. */
const bestMarks = (marks: readonly Mark[]): readonly Mark[] =>
  marks.filter(
    ({ label, by }) => by === 'found' || !marks.some((it) => it.label === label && it.by === 'found'),
  )
