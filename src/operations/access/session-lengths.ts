import type { Role } from '../../store/database/actor.ts'

export type SessionLength = { readonly hours: number; readonly idleMinutes: number }

/**
 * How long a session lasts at most, and unused. A reviewer decides what a county's file says: a working day, an hour
 * unused (NIST SP 800-63B-4 asks at the second level for a day and an hour at most; from memory). A crew is out
 * between two covers for longer than an hour.
 */
export const SESSION_LENGTHS: { readonly [R in Role]: SessionLength } = {
  reviewer: { hours: 12, idleMinutes: 60 },
  firm: { hours: 72, idleMinutes: 720 },
  agent: { hours: 24, idleMinutes: 240 },
}

/** For the code that is still to come. */
export const HALF_SESSION: SessionLength = { hours: 0.25, idleMinutes: 15 }
