/** A seeded source of chance (mulberry32): the same seed gives the same throws on every machine. */
export class Chance {
  private state: number
  constructor(seed: number) {
    this.state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0
  }
  unit(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let mixed = this.state
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  between(least: number, most: number): number {
    return least + this.unit() * (most - least)
  }
  whole(least: number, most: number): number {
    return least + Math.floor(this.unit() * (most - least + 1))
  }
  chance(share: number): boolean {
    return this.unit() < share
  }
  pick<T>(list: readonly T[]): T {
    return list[Math.floor(this.unit() * list.length)]!
  }
  /** One of the words between bars. */
  of(bars: string): string {
    return this.pick(bars.split('|'))
  }
  shuffled<T>(list: readonly T[]): T[] {
    const copy = [...list]
    for (let at = copy.length - 1; at > 0; at--) {
      const other = Math.floor(this.unit() * (at + 1))
      ;[copy[at], copy[other]] = [copy[other]!, copy[at]!]
    }
    return copy
  }
  /** Some of a list, in its order. */
  some<T>(list: readonly T[], share: number): T[] {
    return list.filter(() => this.chance(share))
  }
}
