import { tankCapacity } from '../../src/geometry/volume/tank-capacity.ts'
import type { TankShape } from '../../src/geometry/volume/tank-shape.ts'
import { measuredLength } from '../../src/measure/measured-length.ts'
import type { Uncertain } from '../../src/measure/uncertain.ts'

/**
 * One tank capacity with its uncertainty, from dimensions already measured, beside the same volume as bare arithmetic.
 * Prints one line of JSON per shape: `value` and `limit` in µs, `ratio` to the bare arithmetic. Exits 1 past the limit.
 */
const LIMIT_US = 5
const BATCH = 20_000
const BATCHES = 31

const taped = (ft: number, name: string): Uncertain => measuredLength(ft, 'inside-tape', 'tape', name)

/** 64 tanks, so that nothing can be computed once and kept. */
const many = <T>(make: (i: number) => T): readonly T[] => Array.from({ length: 64 }, (_, i) => make(i))

const boxes = many(
  (i): TankShape => ({
    kind: 'rectangular',
    length: taped(8 + i / 64, 'length'),
    width: taped(4 + i / 128, 'width'),
    liquidDepth: taped(4 + i / 256, 'depth'),
  }),
)
const barrels = many(
  (i): TankShape => ({
    kind: 'horizontal-cylinder',
    diameter: taped(5 + i / 64, 'diameter'),
    length: taped(8 + i / 128, 'length'),
    liquidDepth: taped(4 + i / 256, 'depth'),
  }),
)

let kept = 0
const capacity = (shape: TankShape): number => {
  const answer = tankCapacity(shape)
  return answer.ok ? answer.value.value.value : Number.NaN
}
const bareBox = (shape: TankShape): number =>
  shape.kind === 'rectangular'
    ? (shape.length.value * shape.width.value * shape.liquidDepth.value * 1728) / 231
    : Number.NaN
const bareBarrel = (shape: TankShape): number => {
  if (shape.kind !== 'horizontal-cylinder') return Number.NaN
  const [r, h] = [shape.diameter.value / 2, shape.liquidDepth.value]
  const area = r * r * Math.acos((r - h) / r) - (r - h) * Math.sqrt(2 * r * h - h * h)
  return (area * shape.length.value * 1728) / 231
}

/** Median over batches of the time of one call, µs. */
function microseconds(f: (shape: TankShape) => number, shapes: readonly TankShape[]): number {
  const times: number[] = []
  for (let batch = 0; batch < BATCHES; batch++) {
    const started = performance.now()
    for (let i = 0; i < BATCH; i++) kept += f(shapes[i & 63]!)
    times.push(((performance.now() - started) * 1000) / BATCH)
  }
  return times.sort((a, b) => a - b)[BATCHES >> 1]!
}

const figure = (value: number): number => Number(value.toPrecision(3))

for (const [what, shapes, bare] of [
  ['tank capacity with uncertainty, rectangular, µs', boxes, bareBox],
  ['tank capacity with uncertainty, lying cylinder, µs', barrels, bareBarrel],
] as const) {
  const value = microseconds(capacity, shapes)
  const ratio = value / microseconds(bare, shapes)
  console.log(JSON.stringify({ what, value: figure(value), limit: LIMIT_US, ratio: figure(ratio) }))
  if (value > LIMIT_US) process.exitCode = 1
}
if (!Number.isFinite(kept)) throw new Error('a tank in the benchmark has no capacity')
