/** Which of a number of things belong together, and how much more clearly to their own group than to any other. */
export type Grouped = { readonly group: readonly number[]; readonly clear: readonly number[] }

/**
 * Things put together two groups at a time, those that belong together most on average first, until no two groups do
 * more likely than not. `same`: how likely two things belong together.
 */
export function grouped(count: number, same: (a: number, b: number) => number): Grouped {
  const likely = Array.from({ length: count }, (_, a) =>
    Float64Array.from({ length: count }, (_, b) => (a === b ? 1 : (same(a, b) + same(b, a)) / 2)),
  )
  const mean = likely.map((row) => Float64Array.from(row))
  const size = new Array<number>(count).fill(1)
  const group = Array.from({ length: count }, (_, at) => at)
  const alive = new Set(group)
  const best = (a: number): [number, number] => {
    let [at, value] = [-1, 0.5]
    for (const b of alive) if (b !== a && mean[a]![b]! > value) [at, value] = [b, mean[a]![b]!]
    return [at, value]
  }
  const nearest = group.map((a) => best(a))
  for (;;) {
    let [from, share] = [-1, 0.5]
    for (const a of alive)
      if (nearest[a]![0] >= 0 && nearest[a]![1] > share) [from, share] = [a, nearest[a]![1]]
    if (from < 0) break
    const into = nearest[from]![0]
    const all = size[from]! + size[into]!
    for (const other of alive) {
      const joined = (mean[from]![other]! * size[from]! + mean[into]![other]! * size[into]!) / all
      mean[into]![other] = joined
      mean[other]![into] = joined
    }
    size[into] = all
    alive.delete(from)
    group.forEach((one, at) => {
      if (one === from) group[at] = into
    })
    for (const a of alive)
      if (a === into || nearest[a]![0] === from || nearest[a]![0] === into) nearest[a] = best(a)
      else if (mean[a]![into]! > nearest[a]![1]) nearest[a] = [into, mean[a]![into]!]
  }
  const order = [...new Set(group)]
  const own = group.map((one) => order.indexOf(one))
  const clear = own.map((mine, at) => {
    const sums = new Float64Array(order.length)
    const members = new Float64Array(order.length)
    own.forEach((of, other) => {
      if (other === at) return
      sums[of]! += likely[at]![other]!
      members[of]! += 1
    })
    const share = (of: number): number => (members[of] === 0 ? 1 : sums[of]! / members[of]!)
    let rival = 0
    for (let of = 0; of < order.length; of++) if (of !== mine) rival = Math.max(rival, share(of))
    return Math.min(share(mine), 1 - rival)
  })
  return { group: own, clear }
}
