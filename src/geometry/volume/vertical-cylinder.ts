import { err, ok } from '../../base/result.ts'
import { type Faults, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Measured } from './body.ts'
import type { VerticalCylinder } from './tank-shape.ts'

/**
 * Standing cylinder V = π·d²·D ÷ 4; with another diameter e at the floor, the cone frustum
 * V = π·D·(d² + d·e + e²) ÷ 12.
 */
export function verticalCylinder(shape: VerticalCylinder): Measured {
  const { diameter, liquidDepth, floorDiameter, insideHeight } = shape
  const faults: Faults = []
  positive(faults, '/diameter', 'inside diameter', diameter)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  if (floorDiameter) positive(faults, '/floorDiameter', 'diameter at the floor', floorDiameter)
  if (insideHeight) {
    positive(faults, '/insideHeight', 'inside height', insideHeight)
    within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside height', insideHeight])
  }
  if (faults.length > 0) return err(faults)

  const [d, D] = [diameter.value, liquidDepth.value]
  const surfaceAt = ([a = 0]: readonly number[]) => (Math.PI * a * a) / 4
  if (!floorDiameter) {
    const area = surfaceAt([d])
    return ok({
      inputs: [diameter, liquidDepth],
      cuFt: area * D,
      slopes: [(Math.PI * d * D) / 2, area],
      volumeAt: ([a = 0, h = 0]) => ((Math.PI * a * a) / 4) * h,
      surfaceAt,
      write: () => [
        {
          says: 'Volume of the liquid in a standing cylinder',
          formula: 'V = π × d² × D ÷ 4',
          numbers: `π × ${n(d)}² × ${n(D)} ÷ 4`,
          result: `${n(area * D)} cu ft`,
        },
      ],
    })
  }
  const e = floorDiameter.value
  const volumeAt = ([a = 0, h = 0, b = 0]: readonly number[]) => (Math.PI * h * (a * a + a * b + b * b)) / 12
  return ok({
    inputs: [diameter, liquidDepth, floorDiameter],
    cuFt: volumeAt([d, D, e]),
    slopes: [(Math.PI * D * (2 * d + e)) / 12, volumeAt([d, 1, e]), (Math.PI * D * (2 * e + d)) / 12],
    volumeAt,
    surfaceAt,
    write: () => [
      {
        says: 'Volume of the liquid in a tapered standing cylinder, e the diameter at the floor',
        formula: 'V = π × D × (d² + d × e + e²) ÷ 12',
        numbers: `π × ${n(D)} × (${n(d)}² + ${n(d)} × ${n(e)} + ${n(e)}²) ÷ 12`,
        result: `${n(volumeAt([d, D, e]))} cu ft`,
      },
    ],
  })
}
