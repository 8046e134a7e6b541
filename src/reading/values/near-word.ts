/** Letters to change, put in or take out to make one word of the other (Levenshtein's distance). */
export function lettersApart(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++)
      row.push(Math.min(row[j - 1]! + 1, above[j]! + 1, above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)))
    above = row
  }
  return above[b.length]!
}
