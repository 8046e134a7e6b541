import { lettersApart } from '../values/near-word.ts'

/** Letters and figures of a word, small: what two readings of one printed word share. */
export const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '')

/** Do two plain words spell one, misread letters forgiven: none in three, one in six, and so on? */
export function alike(a: string, b: string): boolean {
  if (a === b) return true
  const most = Math.floor(Math.max(a.length, b.length) / 4)
  return most > 0 && Math.abs(a.length - b.length) <= most && lettersApart(a, b) <= most
}
