import { err, ok } from '../../base/result.ts'
import { type Faults, positive, within } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Measured } from './body.ts'
import type { VerticalOval } from './tank-shape.ts'

/** Standing tank, plan of two half circles with straight sides between: V = (w·(L − w) + π·w²/4) × D, L over all. */
export function verticalOval({ length, width, liquidDepth, insideHeight }: VerticalOval): Measured {
  const faults: Faults = []
  positive(faults, '/length', 'inside length', length)
  positive(faults, '/width', 'inside width', width)
  positive(faults, '/liquidDepth', 'liquid depth', liquidDepth)
  within(faults, '/width', ['inside width', width], ['inside length', length])
  if (insideHeight) {
    positive(faults, '/insideHeight', 'inside height', insideHeight)
    within(faults, '/liquidDepth', ['liquid depth', liquidDepth], ['inside height', insideHeight])
  }
  if (faults.length > 0) return err(faults)

  const [L, w, D] = [length.value, width.value, liquidDepth.value]
  const area = plan(L, w)
  return ok({
    inputs: [length, width, liquidDepth],
    cuFt: area * D,
    slopes: [w * D, (L - 2 * w + (Math.PI * w) / 2) * D, area],
    volumeAt: ([a = 0, b = 0, d = 0]) => plan(a, b) * d,
    surfaceAt: ([a = 0, b = 0]) => plan(a, b),
    write: () => [
      {
        says: 'Volume of the liquid, plan of two half circles with straight sides between',
        formula: 'V = (w × (L − w) + π × w² ÷ 4) × D',
        numbers: `(${n(w)} × (${n(L)} − ${n(w)}) + π × ${n(w)}² ÷ 4) × ${n(D)}`,
        result: `${n(area * D)} cu ft`,
      },
    ],
  })
}

const plan = (L: number, w: number): number => w * (L - w) + (Math.PI * w * w) / 4
