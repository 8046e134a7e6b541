import { FIELDS, TOLD_OF, UNITS_OF } from './fields.ts'
import type { Piece } from './pieces.ts'

/** The model's answers for a page: for each piece its tags, and for each two pieces how they belong together. */
export type Answers = { readonly tags: Float32Array; readonly pairs: Float32Array }

const BEGINS_AT = FIELDS.length
const OF_AT = BEGINS_AT + 1
const EXISTING_AT = OF_AT + TOLD_OF.length
const UNIT_AT = EXISTING_AT + 1
export const TAGS = UNIT_AT + UNITS_OF.length

export const chance = (logit: number): number => 1 / (1 + Math.exp(-logit))

/** Place and share of the likeliest of some logits. */
export function likeliest(logits: Float32Array, from: number, count: number): { at: number; share: number } {
  let best = 0
  for (let at = 1; at < count; at++) if (logits[from + at]! > logits[from + best]!) best = at
  let sum = 0
  for (let at = 0; at < count; at++) sum += Math.exp(logits[from + at]! - logits[from + best]!)
  return { at: best, share: 1 / sum }
}

/** Pieces that make one value. */
export type Span = {
  readonly pieces: number[]
  readonly field: number
  readonly of: number
  readonly existing: number
  readonly unit: number
  readonly score: number
}

type Open = { pieces: number[]; field: number; share: number }

/** Runs of pieces of one field, each begun where the model says so or where nothing of it stands before. */
export function spansOf(pieces: readonly Piece[], { tags }: Answers): Span[] {
  const spans: Open[] = []
  const lastOf = new Map<number, Open>()
  pieces.forEach((_, index) => {
    const { at: field, share } = likeliest(tags, index * TAGS, FIELDS.length)
    if (field === 0) return
    const open = lastOf.get(field)
    const begins = chance(tags[index * TAGS + BEGINS_AT]!) > 0.5
    if (open && !begins && goesOn(pieces, open.pieces.at(-1)!, index)) {
      open.pieces.push(index)
      open.share = Math.min(open.share, share)
      return
    }
    const span = { pieces: [index], field, share }
    spans.push(span)
    lastOf.set(field, span)
  })
  return spans.map(({ pieces: own, field, share }): Span => {
    const first = own[0]!
    const of = mean(tags, own, OF_AT, TOLD_OF.length)
    return {
      pieces: own,
      field,
      of: of.at,
      existing: chance(tags[first * TAGS + EXISTING_AT]!),
      unit: likeliest(tags, first * TAGS + UNIT_AT, UNITS_OF.length).at,
      score: share * of.share,
    }
  })
}

/** The next word of a line, or the first of the next one where a text runs on. */
function goesOn(pieces: readonly Piece[], last: number, next: number): boolean {
  const [a, b] = [pieces[last]!, pieces[next]!]
  if (a.row === b.row) return b.box.x - a.box.x - a.box.w < 3 * a.box.h
  const down = b.box.y - a.box.y
  return down > 0 && down < 2.6 * a.box.h && b.box.x < a.box.x + a.box.w
}

function mean(
  tags: Float32Array,
  own: readonly number[],
  from: number,
  count: number,
): { at: number; share: number } {
  const sums = new Float32Array(count)
  for (const piece of own) for (let at = 0; at < count; at++) sums[at]! += tags[piece * TAGS + from + at]!
  for (let at = 0; at < count; at++) sums[at]! /= own.length
  return likeliest(sums, 0, count)
}
