import { err, ok, type Result } from '../../base/result.ts'
import type { Issue } from '../../measure/issue.ts'
import { type Faults, positive } from '../../measure/length-faults.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { expanded, over, plus, times, type Uncertain } from '../../measure/uncertain.ts'

/** One layer that a pit passes through: its thickness, ft, and its percolation rate, min/in. */
export type SoilLayer = {
  readonly name: string
  readonly thickness: Uncertain
  readonly minPerIn: Uncertain
}

/** EPA 625/1-80-012 (1980), p. 236: layers slower than 30 min/in are left out of a pit's sidewall. */
export const EPA_1980_SLOWEST_LAYER_MIN_PER_IN = 30

export type LayeredWall = {
  /** Thickness of all the layers that count, ft: the height of wall to use. */
  readonly effectiveDepth: Uncertain
  /** Mean percolation rate of those layers, weighted by thickness, min/in. */
  readonly minPerIn: Uncertain
  readonly excluded: readonly SoilLayer[]
  /** Layers whose rate lies so near the limit that their uncertainty straddles it: in by value, or out by value. */
  readonly nearLimit: readonly SoilLayer[]
}

/**
 * The wall of a seepage pit through several soils (EPA 625/1-80-012, 1980, p. 236): layers slower than
 * `slowestMinPerIn` don't count, and the rest share one percolation rate weighted by their thickness,
 * p = Σ(t·p) ÷ Σt. Comes back with an issue where no layer counts: such a pit has no sidewall to speak of.
 */
export function layeredWall(
  layers: readonly SoilLayer[],
  slowestMinPerIn: number = EPA_1980_SLOWEST_LAYER_MIN_PER_IN,
): Result<Worked<LayeredWall>, readonly Issue[]> {
  const faults: Faults = []
  for (const [i, { thickness, minPerIn, name }] of layers.entries()) {
    positive(faults, `/${i}/thickness`, `thickness of ${name}`, thickness)
    if (!(minPerIn.value > 0 && Number.isFinite(minPerIn.value)))
      faults.push({
        pointer: `/${i}/minPerIn`,
        message: `The percolation rate of ${name} must be above zero.`,
      })
  }
  if (faults.length > 0) return err(faults)
  const counted = layers.filter((layer) => layer.minPerIn.value <= slowestMinPerIn)
  const [first] = counted
  if (!first)
    return err([
      {
        pointer: '',
        message: `No layer is as fast as ${n(slowestMinPerIn)} min/in: no wall of this pit counts.`,
      },
    ])
  const effectiveDepth = counted.map(({ thickness }) => thickness).reduce(plus)
  const weighted = counted.map(({ thickness, minPerIn }) => times(thickness, minPerIn)).reduce(plus)
  const wall: LayeredWall = {
    effectiveDepth,
    minPerIn: counted.length === 1 ? first.minPerIn : over(weighted, effectiveDepth),
    excluded: layers.filter((layer) => layer.minPerIn.value > slowestMinPerIn),
    nearLimit: layers.filter(({ minPerIn }) => straddles(minPerIn, slowestMinPerIn)),
  }
  return ok(worked(wall, () => steps(wall, counted, slowestMinPerIn)))
}

const straddles = (x: Uncertain, limit: number): boolean =>
  Math.abs(x.value - limit) <= expanded(x) && expanded(x) > 0

function steps(wall: LayeredWall, counted: readonly SoilLayer[], slowest: number): readonly Step[] {
  const depth = counted.map(({ thickness }) => n(thickness.value)).join(' + ')
  const left = wall.excluded.map(({ name, minPerIn }) => `${name} (${n(minPerIn.value)} min/in)`).join(', ')
  return [
    {
      says:
        left === ''
          ? 'Height of wall that counts: every layer'
          : `Height of wall that counts, without ${left}`,
      formula: `h = Σ t, layers to ${n(slowest)} min/in`,
      numbers: depth,
      result: `${n(wall.effectiveDepth.value)} ft`,
    },
    {
      says: 'Mean percolation rate, weighted by thickness',
      formula: 'p = Σ (t × p) ÷ Σ t',
      numbers: `(${counted.map((l) => `${n(l.thickness.value)} × ${n(l.minPerIn.value)}`).join(' + ')}) ÷ (${depth})`,
      result: `${n(wall.minPerIn.value)} min/in`,
    },
  ]
}
