export type Dice = {
  readonly unit: () => number
  readonly whole: (least: number, most: number) => number
  readonly pick: <T>(list: readonly T[]) => T
  readonly chance: (share: number) => boolean
}

/** A seeded source of chance for tests (mulberry32): the same seed gives the same throws on every machine. */
export function dice(seed: number): Dice {
  let state = seed >>> 0
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = state
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const whole = (least: number, most: number): number => least + Math.floor(unit() * (most - least + 1))
  return {
    unit,
    whole,
    pick: (list) => list[whole(0, list.length - 1)]!,
    chance: (share) => unit() < share,
  }
}
