import type { ProposedField } from '../proposal.ts'

/** Who saw a value on a picture: two readers alike, or one of them alone or against the other. */
type Witness = 'alike' | 'alone'

/**
 * How well label, place and spelling fit, as `choose` weighs them, against the share of such values that were right:
 * points of a line, rising. Fitted to 1,335 fields of scans (eleven layouts, clean to fax); docs/reading.md has the table.
 */
const SHARES: Record<Witness, readonly (readonly [weight: number, share: number])[]> = {
  alike: [
    [0, 0.3],
    [0.25, 0.5],
    [0.45, 0.86],
    [0.55, 0.92],
    [0.65, 0.96],
    [0.75, 0.987],
    [0.9, 0.995],
    [1, 0.998],
  ],
  alone: [
    [0, 0.15],
    [0.25, 0.2],
    [0.35, 0.38],
    [0.45, 0.45],
    [0.55, 0.75],
    [0.75, 0.82],
    [0.85, 0.93],
    [1, 0.97],
  ],
}

/**
 * Below this a field read from a picture stays empty: it is better to ask than to guess. On fair scans 0.4 would offer
 * 1.6 fields more in a hundred and on bad ones be wrong for 28 of those offered instead of 12.
 */
export const LEAST_PROPOSED = 0.5
/** Two readers may see the same figures and it still be unclear what they belong to: then they are not marked. */
const LEAST_MARKED = 0.97

/**
 * A field read from a picture, with its confidence as the share of such readings that are right, and the mark of two
 * readers only where it is earned. A file's own text needs none of it: its figures are what was typed, every field of
 * the text PDFs measured was right, and the weight as it is errs on the side of asking.
 */
export function calibrated(field: ProposedField): ProposedField {
  const confidence = shareAt(SHARES[field.readAlike === true ? 'alike' : 'alone'], field.confidence)
  const isBare = field.doubts.some(({ kind }) => kind === 'unit-assumed')
  const readAlike = field.readAlike === true ? confidence >= LEAST_MARKED && !isBare : field.readAlike
  return { ...field, confidence, readAlike }
}

function shareAt(points: readonly (readonly [number, number])[], weight: number): number {
  const next = Math.max(
    1,
    points.findIndex(([at]) => at >= weight),
  )
  const [[x0, y0], [x1, y1]] = [points[next - 1]!, points[next]!]
  return y0 + ((y1 - y0) * Math.min(1, Math.max(0, weight - x0))) / (x1 - x0)
}
