import { isAbsorption } from '../../catalog/kinds.ts'
import type { SubjectKind } from '../asks.ts'
import type { ToldOf } from './fields.ts'
import type { LinkedValue } from './links.ts'

/** Words of a label that name the kind of a drainfield more surely than its place does. */
const NAMED_BY: readonly (readonly [RegExp, ToldOf])[] = [
  [/trench|lateral|\blines?\b/i, 'trench'],
  [/cess/i, 'cesspool'],
  [/\bpits?\b|dry ?well/i, 'seepage-pit'],
  [/\bbeds?\b(?! ?rooms?)/i, 'bed'],
  [/chamber/i, 'chambers'],
  [/mound|at.grade/i, 'mound'],
]
const isField = (of: ToldOf): boolean =>
  of === 'absorption' || of === 'cesspool' || (of !== 'permit' && of !== 'other' && isAbsorption(of))

/**
 * Of which kind a value's part is: null for the permit's own, `left-out` for what is no part of a system. What the
 * labels of a field's values name counts before what the model took it for, for forms of a field look much alike.
 */
export function partOf(
  { of, part, existing }: LinkedValue,
  permit: readonly LinkedValue[],
): SubjectKind | null | 'left-out' {
  if (of === 'permit') return null
  if (of === 'other' || of === 'well') return 'left-out'
  if (!isField(of)) return of
  const own = permit.filter((value) => value.part === part && value.existing === existing)
  const words = own
    .map(({ field, text, label }) => `${field === 'part' ? text : ''} ${label?.text ?? ''}`)
    .join(' ')
  const named = NAMED_BY.filter(([spelling]) => spelling.test(words)).map(([, kind]) => kind)
  const [only, ...others] = new Set(named)
  const isPart = own.some(({ field }) => field === 'part')
  if (only !== undefined && others.length === 0 && !(isPart && of !== 'absorption'))
    return only as SubjectKind
  return of
}

const isTie = ({ field }: LinkedValue): boolean => field === 'tieA' || field === 'tieB'

/** A tie is two distances: one that stands alone goes to the part of the other one beside it. */
export function withWholeTies(values: readonly LinkedValue[]): LinkedValue[] {
  const ties = values.filter(isTie)
  const isAlone = (value: LinkedValue): boolean =>
    !ties.some(
      (other) => other.permit === value.permit && other.part === value.part && other.field !== value.field,
    )
  const alone = ties.filter(isAlone)
  const moved = new Map<LinkedValue, LinkedValue>()
  for (const a of alone) {
    const b = alone.find(
      (other) =>
        a.field === 'tieA' &&
        other.field === 'tieB' &&
        other.permit === a.permit &&
        !moved.has(other) &&
        Math.abs(other.box.y - a.box.y) < 3 * a.box.h,
    )
    if (!b) continue
    // A tank is what is tied first of all (common practice).
    const [from, to] = b.of === 'tank' || (a.of !== 'tank' && b.score > a.score) ? [a, b] : [b, a]
    moved.set(from, {
      ...from,
      of: to.of,
      part: to.part,
      existing: to.existing,
      partScore: Math.min(from.partScore, 0.6),
    })
    moved.set(to, { ...to, partScore: Math.min(to.partScore, 0.6) })
  }
  return values.map((value) => moved.get(value) ?? value)
}
