import type { ProposedField } from '../proposal.ts'

/** Who saw a value on a picture: two readers alike, or one of them alone or against the other. */
type Witness = 'alike' | 'alone'
/** How well a page can be read: `clear` where the readers see most of its values alike. Nothing tells more. */
export type Page = 'clear' | 'poor'

/**
 * How well label, place and spelling fit, as `choose` weighs them, against the share of such values that were right:
 * points of a line, rising. Fitted to 4,700 fields of scans (seven layouts, clean to fax); docs/reading.md has the table.
 */
const SHARES: Record<Page, Record<Witness, readonly (readonly [weight: number, share: number])[]>> = {
  clear: {
    alike: [
      [0, 0.5],
      [0.25, 0.75],
      [0.4, 0.88],
      [0.5, 0.93],
      [0.6, 0.98],
      [0.7, 0.99],
      [0.85, 0.997],
      [1, 0.999],
    ],
    alone: [
      [0, 0.1],
      [0.25, 0.4],
      [0.35, 0.62],
      [0.4, 0.76],
      [0.5, 0.86],
      [0.6, 0.92],
      [0.7, 0.96],
      [1, 0.985],
    ],
  },
  poor: {
    alike: [
      [0, 0.5],
      [0.25, 0.66],
      [0.4, 0.7],
      [0.5, 0.78],
      [0.6, 0.88],
      [0.7, 0.915],
      [0.8, 0.955],
      [0.9, 0.982],
      [1, 0.995],
    ],
    alone: [
      [0, 0.1],
      [0.25, 0.25],
      [0.35, 0.45],
      [0.45, 0.62],
      [0.5, 0.74],
      [0.6, 0.85],
      [0.7, 0.9],
      [1, 0.96],
    ],
  },
}

/** Where there was one reader alone, the other is taken to have seen nothing, which `choose` weighs so. */
const UNASKED = 0.85

/** The share of a page's values that two readers see alike from which it is clear, and how many values tell. */
const CLEAR = 0.7
const TELLING = 5

export function pageOf(fields: readonly ProposedField[]): Page {
  const alike = fields.filter(({ readAlike }) => readAlike === true).length
  return fields.length >= TELLING && alike >= CLEAR * fields.length ? 'clear' : 'poor'
}

/** Below this a field read from a picture stays empty: it is better to ask than to guess. */
export const LEAST_PROPOSED = 0.6
/** Two readers may see the same figures and it still be unclear what they belong to: then they are not marked. */
const LEAST_MARKED = 0.97
/** Doubts about what a value is, which no second reader can lift. */
const UNMARKED = new Set(['unit-assumed', 'belongs-unclear', 'meaning-assumed'])

/**
 * A field read from a picture, with its confidence as the share of such readings that are right, and the mark of two
 * readers only where it is earned. A file's own text needs none of it: its figures are what was typed, every field of
 * the text PDFs measured was right, and the weight as it is errs on the side of asking.
 */
export function calibrated(field: ProposedField, page: Page): ProposedField {
  const weight = field.readAlike === null ? field.confidence * UNASKED : field.confidence
  const confidence = shareAt(SHARES[page][field.readAlike === true ? 'alike' : 'alone'], weight)
  const isBare = field.doubts.some(({ kind }) => UNMARKED.has(kind))
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
