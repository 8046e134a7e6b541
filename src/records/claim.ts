import { isNonEmpty } from '../base/non-empty.ts'
import type { Claim, Origin } from './as-built.ts'

export const SILENT: Claim<never> = { state: 'silent' }

export const stated = <T>(value: T, origin: Origin): Claim<T> => ({ state: 'stated', value, origin })

/** The one value on record, or null where it is silent, unreadable or contradicted. */
export const statedValue = <T>(claim: Claim<T>): T | null => (claim.state === 'stated' ? claim.value : null)

/**
 * Do two writings mean the same? Lengths and volumes agree when they differ by no more than half of the last place
 * of each (23.5 ft and 23'-6" agree); all else must be equal, key by key.
 */
export function sameMeaning(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  for (const [unit, half] of [
    ['ft', 'halfStepFt'],
    ['gal', 'halfStepGal'],
  ] as const) {
    if (unit in a && unit in b) {
      const [x, y] = [a as Record<string, number>, b as Record<string, number>]
      const slack = Math.min(x[half] ?? 0, y[half] ?? 0)
      return Math.abs(x[unit]! - y[unit]!) <= slack + 1e-9
    }
  }
  const [x, y] = [a as Record<string, unknown>, b as Record<string, unknown>]
  return [...new Set([...Object.keys(x), ...Object.keys(y)])].every((key) => sameMeaning(x[key], y[key]))
}

/** Two papers speak of one thing and neither supersedes the other: keep what agrees, show what does not. */
export function together<T>(older: Claim<T>, newer: Claim<T>): Claim<T> {
  if (newer.state === 'silent') return older
  if (older.state === 'silent') return newer
  if (newer.state === 'unreadable') return older
  if (older.state === 'unreadable') return newer
  const before = older.state === 'stated' ? [{ value: older.value, origin: older.origin }] : older.claims
  const after = newer.state === 'stated' ? [{ value: newer.value, origin: newer.origin }] : newer.claims
  const added = after.filter((claim) => !before.some((known) => sameMeaning(known.value, claim.value)))
  if (added.length === 0) return older
  const claims = [...before, ...added]
  return isNonEmpty(claims) ? { state: 'contradictory', claims } : older
}

/** A later paper that supersedes: what it states stands, what it leaves out goes on as it was. */
export const superseded = <T>(older: Claim<T>, newer: Claim<T>): Claim<T> =>
  newer.state === 'silent' ? older : newer
