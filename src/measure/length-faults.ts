import type { Issue } from './issue.ts'
import { printLength } from './print/length.ts'
import { expanded, minus, type Uncertain } from './uncertain.ts'

/** Gathers every fault of a shape, so that all are told at once. */
export type Faults = Issue[]

/** Nothing on one parcel is longer or shorter than these; what is was mistyped, and would overflow or vanish. */
const LONGEST_FT = 10_000
const SHORTEST_FT = 0.001

/** A length that must be more than zero, and one that a thing on a parcel can have. */
export function positive(faults: Faults, pointer: string, name: string, length: Uncertain): void {
  const ft = length.value
  if (ft >= SHORTEST_FT && ft <= LONGEST_FT) return
  const must =
    ft > LONGEST_FT
      ? `be at most ${LONGEST_FT} ft`
      : ft > 0
        ? `be at least ${SHORTEST_FT} ft`
        : 'be more than zero'
  faults.push({ pointer, message: `The ${name} is ${ft} ft: it must ${must}.` })
}

/** A length that may be zero. */
export function notNegative(faults: Faults, pointer: string, name: string, length: Uncertain): void {
  if (length.value >= 0 && length.value <= LONGEST_FT) return
  const must = length.value > LONGEST_FT ? `be at most ${LONGEST_FT} ft` : 'not be less than zero'
  faults.push({ pointer, message: `The ${name} is ${length.value} ft: it must ${must}.` })
}

/**
 * One length that can't be more than another. Measurements that exceed it only within their joint uncertainty (k = 2)
 * pass: two readings of the same height differ by a little.
 */
export function within(
  faults: Faults,
  pointer: string,
  [name, length]: readonly [string, Uncertain],
  [limitName, limit]: readonly [string, Uncertain],
): void {
  if (!(length.value > 0 && limit.value > 0) || length.value <= limit.value) return
  const excess = minus(length, limit)
  if (excess.value <= expanded(excess)) return
  faults.push({
    pointer,
    message:
      `The ${name}, ${printLength(length.value)}, is more than the ${limitName}, ${printLength(limit.value)}, ` +
      'by more than the measurements allow: measure both again.',
  })
}
