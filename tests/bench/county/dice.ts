/** Chance that can be had again: the same seed gives the same throws (mulberry32, public domain; from memory). */
export function dice(seed: number) {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
  const between = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1))
  return {
    next,
    between,
    /** Whether something of that probability happens. */
    chance: (probability: number): boolean => next() < probability,
    pick: <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!,
  }
}

export type Dice = ReturnType<typeof dice>
