/** The fewest signs put in, taken out or changed that make one text into another (Levenshtein 1966). */
export function distance(truth: string, seen: string): number {
  let before = Uint32Array.from({ length: seen.length + 1 }, (_, at) => at)
  for (let row = 1; row <= truth.length; row++) {
    const now = new Uint32Array(seen.length + 1)
    now[0] = row
    for (let column = 1; column <= seen.length; column++) {
      const changed = before[column - 1]! + (truth[row - 1] === seen[column - 1] ? 0 : 1)
      now[column] = Math.min(changed, before[column]! + 1, now[column - 1]! + 1)
    }
    before = now
  }
  return before[seen.length]!
}
