import type { Material } from '../../catalog/choices.ts'
import { SAME_SIZE_FT } from '../checks/pipe.ts'
import { exactly } from '../quantity.ts'
import type { ChangedStretch, Span } from '../reason-of-line.ts'
import type { ShownStretch } from '../thing.ts'

/**
 * A camera's counter slips on its reel, and a drawing's stations are scaled: the end of a stretch on one and on the other
 * lies within 3 ft of the same joint (common practice). A splice shorter than twice that is held to half of its own length.
 */
const SAME_JOINT_FT = 3

/** A line as one side tells it: what it is made of, and where it is made of something else. */
export type LineTold = {
  readonly material: Material | null
  readonly sizeFt: number | null
  readonly segments: readonly ShownStretch[]
  readonly lengthFt: number | null
}

/** The line from end to end: its stretches, and between them what the line itself is said to be. */
export function laidOut(line: LineTold): readonly ShownStretch[] {
  const given = line.segments.map((it) => ({
    ...it,
    material: it.material ?? line.material,
    sizeFt: it.sizeFt ?? line.sizeFt,
  }))
  const rest = line.material === null && line.sizeFt === null ? [] : gaps(given, line.lengthFt)
  const { material, sizeFt } = line
  return [...given, ...rest.map((span) => ({ ...span, material, sizeFt }))].sort((a, b) => a.from - b.from)
}

/** What lies between stretches, before the first and after the last. */
export function gaps(stretches: readonly Span[], lengthFt: number | null): readonly Span[] {
  const ends = [...stretches].sort((a, b) => a.from - b.from)
  let at = 0
  const found: Span[] = []
  for (const { from, to } of ends) {
    if (from > at) found.push({ from: at, to: from })
    at = Math.max(at, to ?? Number.POSITIVE_INFINITY)
  }
  const end = lengthFt ?? (ends.length > 0 ? null : Number.POSITIVE_INFINITY)
  if (end === null ? Number.isFinite(at) : end > at)
    found.push({ from: at, to: end === null || end === Number.POSITIVE_INFINITY ? null : end })
  return found
}

/** Where what was found is other pipe than what is on record, neighbors of one change told as one. */
export function changes(
  recorded: readonly ShownStretch[],
  found: readonly ShownStretch[],
): readonly ChangedStretch[] {
  const all = found.flatMap((seen) =>
    recorded.flatMap((known): readonly ChangedStretch[] => {
      const from = Math.max(seen.from, known.from)
      const to = Math.min(end(seen), end(known))
      const least = Math.min(SAME_JOINT_FT, (end(seen) - seen.from) / 2)
      if (to - from < least) return []
      const [was, is] = [known.material, seen.material]
      const material = was !== null && is !== null && was !== is ? { recorded: was, found: is } : null
      const size = otherSize(known.sizeFt, seen.sizeFt)
      if (material === null && size === null) return []
      return [{ from, to: Number.isFinite(to) ? to : null, material, size }]
    }),
  )
  const told: ChangedStretch[] = []
  for (const next of all) {
    const last = told.at(-1)
    if (last !== undefined && last.to === next.from && isOne(last, next))
      told[told.length - 1] = { ...last, to: next.to }
    else told.push(next)
  }
  return told
}

const end = ({ to }: Span): number => to ?? Number.POSITIVE_INFINITY

const otherSize = (recorded: number | null, found: number | null): ChangedStretch['size'] =>
  recorded === null || found === null || Math.abs(recorded - found) <= SAME_SIZE_FT
    ? null
    : { recorded: exactly(recorded, 'ft'), found: exactly(found, 'ft') }

const isOne = (a: ChangedStretch, b: ChangedStretch): boolean =>
  JSON.stringify([a.material, a.size]) === JSON.stringify([b.material, b.size])
