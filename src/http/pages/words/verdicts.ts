import type { Verdict } from '../../../reconcile/outcome.ts'

/** The sign that stands between record and found, and its word; the sign never stands alone. */
export const VERDICT_WORDS: { readonly [V in Verdict]: { readonly sign: string; readonly word: string } } = {
  agrees: { sign: '=', word: 'agrees' },
  differs: { sign: '≠', word: 'differs' },
  suffices: { sign: '≥', word: 'suffices' },
  'falls-short': { sign: '<', word: 'falls short' },
  'too-close-to-call': { sign: '≈', word: 'too close to call' },
  'cannot-tell': { sign: '?', word: 'cannot tell' },
  'does-not-apply': { sign: '–', word: 'does not apply' },
}
