import { isAbsorption } from '../../catalog/kinds.ts'
import type { Case } from '../../reconcile/case.ts'
import { sizeDiffers } from '../../reconcile/checks/pipe.ts'
import type { Pairing } from '../../reconcile/pairing.ts'
import { statedValue } from '../../records/claim.ts'
import { MATERIAL_NOUNS } from '../../words/nouns.ts'
import { figure } from '../../words/quantity.ts'
import type { Mark } from './mark.ts'

type Spot = { readonly x: number; readonly y: number }

/** What became of a line: the pipe before and now, and the permit that shows it; null where none does. */
export type LineChange = { readonly says: string; readonly permit: string | null }

/**
 * A line on record or found. Papers and inspections say what it joins and never where it runs, so it is drawn straight, and
 * only where one place is known for each of its ends; else `path` is null and the words alone tell of it.
 */
export type PlanLine = {
  readonly label: string
  readonly by: 'recorded' | 'found'
  readonly path: readonly [Spot, Spot] | null
  readonly change: LineChange | null
}

type Lined = Pick<Case, 'asBuilt' | 'pairings'>

/** The lines of a case: from the house to the first vessel, from there to the box, from the last of these to the soil. */
export function planLines(
  { asBuilt, pairings }: Lined,
  marks: readonly Mark[],
  wallFt: number,
): readonly PlanLine[] {
  const placed = (is: (kind: Mark['kind']) => boolean): readonly Spot[] => {
    const of = marks.filter(({ kind }) => is(kind))
    const labels = [...new Set(of.map(({ label }) => label))]
    return labels.flatMap((label) => {
      const own = of.filter((mark) => mark.label === label)
      const best = own.find(({ by }) => by === 'found') ?? own[0]!
      return best.mirror ? [] : [best]
    })
  }
  const [inlet] = placed((kind) => kind === 'tank' || kind === 'cesspool')
  const vessel = placed((kind) => kind === 'tank' || kind === 'pump-chamber').at(-1)
  const [box] = placed((kind) => kind === 'distribution-box')
  const soil = placed(isAbsorption)
  const joined = (kind: string): readonly (readonly [Spot, Spot])[] => {
    if (kind === 'building-sewer') {
      return inlet && inlet.y > 0 ? [[{ x: Math.min(Math.max(inlet.x, 0), wallFt), y: 0 }, inlet]] : []
    }
    if (!vessel) return []
    if (!box) return soil.map((to) => [vessel, to] as const)
    return [[vessel, box], ...soil.map((to) => [box, to] as const)]
  }
  return pairings.flatMap((pairing): readonly PlanLine[] => {
    const { built, found } = pairing
    if (built.kind !== 'building-sewer' && built.kind !== 'effluent-line') return []
    const one = {
      label: built.label,
      by: found?.outcome === 'found' ? ('found' as const) : ('recorded' as const),
      change: changed(pairing, asBuilt),
    }
    const paths = joined(built.kind)
    return paths.length === 0
      ? [{ ...one, path: null }]
      : paths.map((path, at) => ({ ...one, path, change: at === 0 ? one.change : null }))
  })
}

/** As the question about a line's material answers it: by a later permit, or by none. */
function changed({ built, found }: Pairing, asBuilt: Case['asBuilt']): LineChange | null {
  const recorded = statedValue(built.measures.material)
  const now = found?.outcome === 'found' ? found.material : null
  const size = found?.outcome === 'found' && sizeDiffers(built, found)
  if (recorded && now && recorded !== now) {
    return { says: `${MATERIAL_NOUNS[recorded]} on record, ${MATERIAL_NOUNS[now]} found`, permit: null }
  }
  if (size) {
    return { says: `${figure(size.recorded)} pipe on record, ${figure(size.found)} found`, permit: null }
  }
  const former = asBuilt.components.find(({ replacedBy }) => replacedBy === built.key)
  if (!former) return null
  const before = statedValue(former.measures.material)
  const after = now ?? recorded
  const { permit } = built.events[0]
  return {
    says: before && after ? `${MATERIAL_NOUNS[before]} before, ${MATERIAL_NOUNS[after]} since` : 'replaced',
    permit: permit.number,
  }
}
