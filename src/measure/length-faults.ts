import type { Issue } from './issue.ts'
import { printLength } from './print/length.ts'
import { expanded, minus, type Uncertain } from './uncertain.ts'

/** Gathers every fault of a shape, so that all are told at once. */
export type Faults = Issue[]

/** A length that must be finite and more than zero. */
export function positive(faults: Faults, pointer: string, name: string, length: Uncertain): void {
  if (Number.isFinite(length.value) && length.value > 0) return
  faults.push({ pointer, message: `The ${name} is ${length.value} ft: it must be more than zero.` })
}

/** A length that may be zero. */
export function notNegative(faults: Faults, pointer: string, name: string, length: Uncertain): void {
  if (Number.isFinite(length.value) && length.value >= 0) return
  faults.push({ pointer, message: `The ${name} is ${length.value} ft: it can't be less than zero.` })
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
