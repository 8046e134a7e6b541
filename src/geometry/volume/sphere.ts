import { err, ok } from '../../base/result.ts'
import { type Faults, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Measured } from './body.ts'
import type { Sphere } from './tank-shape.ts'

/** Sphere filled to h: V = π·h²·(3·d − 2·h) ÷ 6. */
export function sphere({ diameter, liquidDepth }: Sphere): Measured {
  const faults: Faults = []
  positive(faults, '/diameter', 'inside diameter', diameter)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside diameter', diameter])
  if (faults.length > 0) return err(faults)

  const d = diameter.value
  const h = Math.min(liquidDepth.value, d)
  const cuFt = volume(d, h)
  return ok({
    inputs: [diameter, liquidDepth],
    cuFt,
    slopes: [(Math.PI * h * h) / 2, Math.PI * h * (d - h)],
    volumeAt: ([a = 0, level = 0]) => volume(a, Math.min(level, a)),
    surfaceAt: ([a = 0, level = 0]) => Math.PI * level * Math.max(0, a - level),
    write: () => [
      {
        says: 'Volume of the liquid in a sphere filled to h',
        formula: 'V = π × h² × (3 × d − 2 × h) ÷ 6',
        numbers: `π × ${n(h)}² × (3 × ${n(d)} − 2 × ${n(h)}) ÷ 6`,
        result: `${n(cuFt)} cu ft`,
      },
    ],
  })
}

const volume = (d: number, h: number): number => (Math.PI * h * h * (3 * d - 2 * h)) / 6
