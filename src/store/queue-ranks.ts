import type { Severity } from '../reconcile/kinds.ts'

/** Severities as the queue is ordered by them: worst first. */
export const RANKS: { readonly [S in Severity]: number } = { action: 1, review: 2, note: 3 }
