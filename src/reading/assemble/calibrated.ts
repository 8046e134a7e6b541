import type { ProposedField } from '../proposal.ts'
import { askAt, type OwnShares } from './own-shares.ts'

/**
 * How well label, place, spelling and signs fit, as `choose` weighs them, against the share of such values that were right:
 * points of a line, rising. Fitted to 3,300 fields of scans (24 layouts, clean to fax); docs/reading.md has the table.
 */
const SHARES: Record<'alike' | 'alone', readonly (readonly [weight: number, share: number])[]> = {
  alike: [
    [0, 0.4],
    [0.3, 0.6],
    [0.45, 0.8],
    [0.6, 0.87],
    [0.75, 0.89],
    [0.85, 0.94],
    [0.9, 0.965],
    [0.93, 0.975],
    [0.96, 0.99],
    [0.98, 0.998],
    [1, 0.999],
  ],
  alone: [
    [0, 0.1],
    [0.15, 0.2],
    [0.25, 0.32],
    [0.35, 0.5],
    [0.45, 0.66],
    [0.5, 0.76],
    [0.6, 0.87],
    [0.7, 0.91],
    [0.8, 0.97],
    [1, 0.99],
  ],
}

/** Where there was one reader alone, the other is taken to have seen nothing, which `choose` weighs so. */
const UNASKED = 0.85

/** Below this a field read from a picture stays empty: it is better to ask than to guess. */
export const LEAST_PROPOSED = 0.6
/** Two readers may see the same figures and it still be unclear what they belong to: then they are not marked. */
const LEAST_MARKED = 0.985
/** Doubts about what a value is, which no second reader can lift. */
const UNMARKED = new Set(['unit-assumed', 'belongs-unclear', 'meaning-assumed'])

/**
 * A field read from a picture, with its confidence as the share of such readings that are right, and the mark of two
 * readers only where it is earned. A file's own text needs none of it: its figures are what was typed, every field of
 * the text PDFs measured was right, and the weight as it is errs on the side of asking.
 */
export function calibrated(field: ProposedField, own: OwnShares): ProposedField {
  const weight = field.readAlike === null ? field.confidence * UNASKED : field.confidence
  const seenBy = field.readAlike === true ? 'alike' : 'alone'
  const general = { confidence: shareAt(SHARES[seenBy], weight), seenBy } as const
  const confidence = own(general.confidence, seenBy, askAt(field.pointer))
  const isBare = field.doubts.some(({ kind }) => UNMARKED.has(kind))
  const readAlike = field.readAlike === true ? confidence >= LEAST_MARKED && !isBare : field.readAlike
  return { ...field, confidence, general, readAlike }
}

/** A field of a file's own text: as sure as it is, unless the county's own confirmations say otherwise. */
export function ofOwnText(field: ProposedField, own: OwnShares): ProposedField {
  const general = { confidence: field.confidence, seenBy: 'text' } as const
  return { ...field, general, confidence: own(general.confidence, 'text', askAt(field.pointer)) }
}

function shareAt(points: readonly (readonly [number, number])[], weight: number): number {
  const next = Math.max(
    1,
    points.findIndex(([at]) => at >= weight),
  )
  const [[x0, y0], [x1, y1]] = [points[next - 1]!, points[next]!]
  return y0 + ((y1 - y0) * Math.min(1, Math.max(0, weight - x0))) / (x1 - x0)
}
