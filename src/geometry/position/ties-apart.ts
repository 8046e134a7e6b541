import { printTenths } from '../../measure/print/length.ts'

/** Two arcs that never cross: the record (or a tape) is wrong somewhere. Lengths in ft. */
export type TiesApart = {
  readonly kind: 'ties-too-different' | 'ties-too-short'
  /** How far the arcs miss each other. */
  readonly gapFt: number
  readonly says: string
  /** Readings of one length that would let the arcs cross. */
  readonly fixes: readonly {
    readonly which: 'tie-a' | 'tie-b' | 'baseline'
    readonly ft: number
    readonly says: string
  }[]
}

type Lengths = { readonly a: number; readonly b: number; readonly baseline: number }

/** |b − a| ≤ baseline ≤ a + b, or no triangle closes. Positive: by how much it fails. */
export const tiesGap = ({ a, b, baseline }: Lengths): number =>
  Math.max(Math.abs(b - a) - baseline, baseline - a - b)

const NAMES = { 'tie-a': 'the tie from A', 'tie-b': 'the tie from B', baseline: 'the baseline' } as const

/** 106.2 ft written as a tape in tenths reads it may have been meant as 106'-2", and the other way round. */
function otherReading(ft: number): { readonly ft: number; readonly says: string } | null {
  const whole = Math.floor(ft + 1e-9)
  const rest = ft - whole
  const written = [rest * 10, rest * 100].find(
    (it, i) => near(it) && (i === 0 ? it < 9.5 : it > 9.5 && it < 11.5),
  )
  if (written !== undefined && rest > 1e-6) {
    const inches = Math.round(written)
    const digits = rest * 10 > 0.999 && near(rest * 10) ? 1 : 2
    return { ft: whole + inches / 12, says: `${ft.toFixed(digits)} read as ${whole}'-${inches}"` }
  }
  const inches = Math.round(rest * 12)
  if (!near(rest * 12) || inches < 1 || inches > 9) return null
  return { ft: whole + inches / 10, says: `${whole}'-${inches}" read as ${whole}.${inches} ft` }
}

const near = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-6

/** Says by how much the ties miss, what the smallest correction is, and which other reading of a length would close them. */
export function tiesApart(lengths: Lengths): TiesApart {
  const { a, b, baseline } = lengths
  const gapFt = tiesGap(lengths)
  const different = Math.abs(b - a) - baseline >= baseline - a - b
  const fixes = (['tie-a', 'tie-b', 'baseline'] as const).flatMap((which) => {
    const reading = otherReading(which === 'tie-a' ? a : which === 'tie-b' ? b : baseline)
    if (!reading) return []
    const tried = {
      a: which === 'tie-a' ? reading.ft : a,
      b: which === 'tie-b' ? reading.ft : b,
      baseline: which === 'baseline' ? reading.ft : baseline,
    }
    return tiesGap(tried) <= 0 ? [{ which, ft: reading.ft, says: `${NAMES[which]}: ${reading.says}` }] : []
  })
  const says = different
    ? `the ties ${printTenths(a)} and ${printTenths(b)} differ by ${printTenths(Math.abs(b - a))}, more than the ` +
      `baseline of ${printTenths(baseline)}: no place is that far from both corners. They miss by ${gapFt.toFixed(2)} ft; ` +
      `the baseline would have to be at least ${printTenths(Math.abs(b - a))}, or a corner is not the one named`
    : `the ties ${printTenths(a)} and ${printTenths(b)} together fall short of the baseline of ${printTenths(baseline)} ` +
      `by ${gapFt.toFixed(2)} ft: they cannot meet. A tie is too short, or the baseline too long`
  return { kind: different ? 'ties-too-different' : 'ties-too-short', gapFt, says, fixes }
}
