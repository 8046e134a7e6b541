/** Letters and figures of a word, small: what two readings of one printed word share. */
export const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '')

/** Do two plain words spell one, misread letters forgiven: none in three, one in six, and so on? */
export function alike(a: string, b: string): boolean {
  if (a === b) return true
  const most = Math.floor(Math.max(a.length, b.length) / 4)
  return most > 0 && Math.abs(a.length - b.length) <= most && distance(a, b) <= most
}

/** Letters to change, put in or take out to make one word of the other (Levenshtein's distance). */
function distance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++)
      row.push(Math.min(row[j - 1]! + 1, above[j]! + 1, above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)))
    above = row
  }
  return above[b.length]!
}
