import type { Box } from '../../records/source.ts'
import { around } from '../layout/strip.ts'
import { FIELDS, TOLD_OF, UNITS_OF } from './fields.ts'
import { grouped } from './groups.ts'
import type { LinkedValue, Stretch } from './links.ts'
import type { Piece } from './pieces.ts'
import { type Answers, chance, likeliest, type Span, spansOf } from './spans.ts'

const PERMIT = 0
const PART = 1
const LABEL = 2
/** A label is no longer than this many pieces (common practice of forms). */
const MOST_OF_A_LABEL = 9
const FULL_BOX = /^[[(]\s?[xX✓✔*]\s?[\])]$|^[☒☑✔✓■xX]$/

/** What the model said of a page's pieces, put together: values with what says so, and which belong together. */
export function decoded(pieces: readonly Piece[], answers: Answers): LinkedValue[] {
  const spans = spansOf(pieces, answers)
  const firsts = spans.map((span) => span.pieces[0]!)
  const at = (which: number, a: number, b: number): number =>
    answers.pairs[(which * pieces.length + a) * pieces.length + b]!
  const permits = grouped(spans.length, (a, b) => chance(at(PERMIT, firsts[a]!, firsts[b]!)))
  const ofParts = spans.map(({ of }) => TOLD_OF[of]! !== 'permit')
  const parts = grouped(spans.length, (a, b) =>
    ofParts[a] && ofParts[b] && spans[a]!.of === spans[b]!.of && permits.group[a] === permits.group[b]
      ? chance(at(PART, firsts[a]!, firsts[b]!))
      : 0,
  )
  const used = new Set(spans.flatMap((span) => span.pieces))
  return spans.map((span, nth): LinkedValue => {
    const first = firsts[nth]!
    const label = labelOf(pieces, answers, first, used)
    return {
      ...stretchOf(pieces, span.pieces),
      field: FIELDS[span.field]!,
      of: TOLD_OF[span.of]!,
      existing: span.existing > 0.5,
      unit: UNITS_OF[span.unit]!,
      confidence: Math.min(...span.pieces.map((piece) => pieces[piece]!.confidence)),
      score: rounded(span.score),
      label,
      permit: permits.group[nth]!,
      permitScore: rounded(permits.clear[nth]!),
      part: ofParts[nth] ? parts.group[nth]! : -1,
      partScore: rounded(ofParts[nth] ? parts.clear[nth]! : 1),
      ticked: tickBeside(pieces, span),
    }
  })
}

const rounded = (share: number): number => Math.round(share * 1e4) / 1e4

function stretchOf(pieces: readonly Piece[], own: readonly number[]): Stretch {
  const text = own.map(
    (at, nth) => (nth > 0 && !(pieces[at]!.glued && own[nth - 1] === at - 1) ? ' ' : '') + pieces[at]!.text,
  )
  return { text: text.join(''), box: exact(around(own.map((at) => pieces[at]!.box))) }
}

const exact = ({ x, y, w, h }: Box): Box => ({
  x: +x.toFixed(5),
  y: +y.toFixed(5),
  w: +w.toFixed(5),
  h: +h.toFixed(5),
})

/** The label's first word is where the model points; the rest of it follows on its line up to a mark or a value. */
function labelOf(
  pieces: readonly Piece[],
  { pairs }: Answers,
  first: number,
  used: ReadonlySet<number>,
): LinkedValue['label'] {
  const { at, share } = likeliest(pairs, (LABEL * pieces.length + first) * pieces.length, pieces.length)
  if (at === first) return null
  const own = [at]
  for (let next = at + 1; next < pieces.length && own.length < MOST_OF_A_LABEL; next++) {
    const [before, piece] = [pieces[next - 1]!, pieces[next]!]
    const gap = piece.box.x - before.box.x - before.box.w
    if (piece.row !== before.row || used.has(next) || gap > 1.1 * before.box.h || /[:=?]$/.test(before.text))
      break
    own.push(next)
  }
  return { ...stretchOf(pieces, own), score: rounded(share) }
}

const tickBeside = (pieces: readonly Piece[], { pieces: own }: Span): boolean =>
  [own[0]! - 1, own.at(-1)! + 1].some((at) => {
    const piece = pieces[at]
    return piece !== undefined && piece.row === pieces[own[0]!]!.row && FULL_BOX.test(piece.text)
  })
