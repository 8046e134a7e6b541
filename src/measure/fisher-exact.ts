/**
 * Fisher's exact test of a two-by-two table, two-sided: the probability, when the margins are as they are and nothing
 * ties rows to columns, of a table that is as improbable as this one or more so.
 *
 *   P(a) = C(a+b, a) C(c+d, c) / C(n, a+c)          (hypergeometric)
 *   p = sum of P(k) over all k with P(k) ≤ P(a)
 *
 * R. A. Fisher, The Design of Experiments (1935), chapter 2; Statistical Methods for Research Workers, section 21.02
 * (from memory). Counts are whole and not negative, up to a million or so; 1 where a margin is empty.
 */
export function fisherExact(a: number, b: number, c: number, d: number): number {
  const [row, other, column] = [a + b, c + d, a + c]
  const total = row + other
  if (row === 0 || other === 0 || column === 0 || column === total) return 1
  const constant =
    logFactorial(row) + logFactorial(other) + logFactorial(column) + logFactorial(total - column)
  const logP = (k: number): number =>
    constant -
    logFactorial(total) -
    logFactorial(k) -
    logFactorial(row - k) -
    logFactorial(column - k) -
    logFactorial(other - column + k)
  // Equal tables may differ in the last bits; a relative 1e-7 is what statistics programs allow (from memory).
  const limit = logP(a) + 1e-7
  let p = 0
  for (let k = Math.max(0, column - other); k <= Math.min(row, column); k++) {
    const it = logP(k)
    if (it <= limit) p += Math.exp(it)
  }
  return Math.min(1, p)
}

const known: number[] = [0, 0]

function logFactorial(n: number): number {
  for (let k = known.length; k <= n; k++) known.push(known[k - 1]! + Math.log(k))
  return known[n]!
}

/**
 * Probabilities of several tests made at once, each raised so that all of them together err no more often than one alone
 * would: in order of size, the k-th smallest of m times m − k + 1, never falling. S. Holm, A simple sequentially rejective
 * multiple test procedure, Scandinavian Journal of Statistics 6 (1979) (from memory).
 */
export function holmAdjusted(probabilities: readonly number[]): readonly number[] {
  const order = probabilities.map((p, index) => ({ p, index })).sort((x, y) => x.p - y.p)
  const adjusted = new Array<number>(probabilities.length)
  let least = 0
  order.forEach(({ p, index }, rank) => {
    least = Math.max(least, Math.min(1, p * (probabilities.length - rank)))
    adjusted[index] = least
  })
  return adjusted
}
