import { err, type Result } from '../base/result.ts'
import type { EntryIssue } from '../reading/entry/issues.ts'

/** Why an operation was not done: nothing was changed. Closed, so that whoever answers has to know every kind. */
export type Refusal =
  /** There is no such thing, or the asker may not see it. */
  | { readonly why: 'not-found'; readonly says?: string }
  /** It can be seen and not done by this asker. */
  | { readonly why: 'not-allowed'; readonly says: string }
  /** The state of things does not allow it. */
  | { readonly why: 'conflict'; readonly says: string }
  /** It has changed since the asker read it. */
  | { readonly why: 'stale' }
  /** The organization has, or used of late, as much as it may. */
  | { readonly why: 'quota'; readonly says: string; readonly retryAfterSeconds: number }
  /** What was sent can't be used; pointers are into the body. */
  | { readonly why: 'invalid'; readonly issues: readonly EntryIssue[] }

/** What an operation answers. */
export type Answer<T> = Result<T, Refusal>

export const notFound = (says?: string) => err<Refusal>({ why: 'not-found', ...(says ? { says } : {}) })
export const notAllowed = (says: string) => err<Refusal>({ why: 'not-allowed', says })
export const conflict = (says: string) => err<Refusal>({ why: 'conflict', says })
export const stale = () => err<Refusal>({ why: 'stale' })
export const invalid = (...issues: readonly EntryIssue[]) => err<Refusal>({ why: 'invalid', issues })
