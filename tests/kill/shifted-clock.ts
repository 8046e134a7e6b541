/** Moves this process's clock of the day, as a machine's is moved by hand or by its time service; how time passes stays. */
export function shiftedClock() {
  const Real = globalThis.Date
  let shiftMs = 0
  class Shifted extends Real {
    constructor(...given: readonly unknown[]) {
      super(...((given.length === 0 ? [Real.now() + shiftMs] : given) as [number]))
    }
    static override now = (): number => Real.now() + shiftMs
  }
  globalThis.Date = Shifted as DateConstructor
  return {
    hours: (ahead: number) => {
      shiftMs = ahead * 3_600_000
    },
    restore: () => {
      globalThis.Date = Real
    },
  }
}
