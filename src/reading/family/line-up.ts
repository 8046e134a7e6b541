import type { Box } from '../../records/source.ts'
import { alike, plain } from './alike.ts'
import { type Affine, affineThrough, applied, type Pair, similarityThrough } from './transform.ts'

type Placed = { readonly text: string; readonly box: Box }
export type Sized = { readonly widthPt: number; readonly heightPt: number }

/** How one page lies on another: shifted, scaled, turned and sheared, and a little uneven from place to place. */
export type LineUp = {
  /** A box of the first page, as fractions of the second. */
  readonly onto: (box: Box) => Box
  /** Words of the first that the second has at the same place, once both lie on each other. */
  readonly pairs: number
}

/** How far apart, in heights of the page, two readings of one printed word may lie: a line of type. */
export const NEAR = 0.012
const LEAST_PAIRS = 6
const PLENTY = 30
/** Copies shrink a little, a fax more; paper is laid askew by some degrees. More than this is another form. */
const MOST_SCALE = 1.6
const MOST_TURN = 0.2
const HYPOTHESES = 400

/**
 * Lays one page on another by the words that both have: the similarity that most of them agree on, then the affine
 * transform that fits those best (least squares); null where too few agree. The same pages give the same fit for ever.
 */
export function lineUp(
  from: readonly Placed[],
  fromSize: Sized,
  to: readonly Placed[],
  toSize: Sized,
): LineUp | null {
  const pairs = sharedWords(from, to).map(
    ([a, b]): Pair => ({ from: pointOf(a.box, fromSize), to: pointOf(b.box, toSize) }),
  )
  if (pairs.length < LEAST_PAIRS) return null
  const near = NEAR * toSize.heightPt
  const agreeing = (map: Affine): Pair[] =>
    pairs.filter(({ from: at, to: there }) => {
      const here = applied(map, at)
      return Math.hypot(here.x - there.x, here.y - there.y) < near
    })
  let kept: Pair[] = []
  for (const [a, b] of spreadPairs(pairs)) {
    const map = similarityThrough(a, b)
    if (!map || !isLikely(map)) continue
    const agree = agreeing(map)
    if (agree.length > kept.length) kept = agree
  }
  for (let round = 0; round < 2 && kept.length >= LEAST_PAIRS; round++) {
    const map = affineThrough(kept)
    if (!map) break
    kept = agreeing(map)
  }
  const map = kept.length >= LEAST_PAIRS ? affineThrough(kept) : null
  if (!map || !isLikely(map)) return null
  return { onto: (box) => mapped(box, map, kept, fromSize, toSize), pairs: kept.length }
}

/** More of one word than a heading and its repetition tell nothing of where it belongs. */
const MOST_OF_ONE = 2

/** Words that each page has once or twice, spelled alike: first to the letter, then with misread letters forgiven. */
function sharedWords(from: readonly Placed[], to: readonly Placed[]): [Placed, Placed][] {
  const [ours, theirs] = [fewOf(from), fewOf(to)]
  const exact = [...ours].flatMap(([text, own]): [Placed, Placed][] =>
    own.flatMap((a) => (theirs.get(text) ?? []).map((b): [Placed, Placed] => [a, b])),
  )
  // Enough agree to the letter: the rest would change nothing.
  if (exact.length >= PLENTY) return exact
  const open = [...theirs].filter(([text]) => !ours.has(text) && text.length >= 5)
  const near = [...ours]
    .filter(([text]) => !theirs.has(text) && text.length >= 5)
    .flatMap(([text, own]): [Placed, Placed][] => {
      const hits = open.filter(([other]) => alike(text, other))
      return hits.length === 1 ? own.flatMap((a) => hits[0]![1].map((b): [Placed, Placed] => [a, b])) : []
    })
  return [...exact, ...near]
}

function fewOf(words: readonly Placed[]): Map<string, readonly Placed[]> {
  const found = new Map<string, Placed[]>()
  for (const word of words) {
    const text = plain(word.text)
    if (text.length < 3 || !/[a-z]/.test(text)) continue
    found.set(text, [...(found.get(text) ?? []), word])
  }
  return new Map([...found].filter(([, own]) => own.length <= MOST_OF_ONE))
}

/** The left end of a word at half its height: readers join and part words, and agree on where they begin. */
const pointOf = ({ x, y, h }: Box, { widthPt, heightPt }: Sized) => ({
  x: x * widthPt,
  y: (y + h / 2) * heightPt,
})

/** Pairs of pairs far enough apart to tell the turn and the scale, evenly over all there are. */
function* spreadPairs(pairs: readonly Pair[]): Generator<readonly [Pair, Pair]> {
  const all = (pairs.length * (pairs.length - 1)) / 2
  const step = Math.max(1, Math.floor(all / HYPOTHESES))
  let count = 0
  for (let i = 0; i < pairs.length; i++)
    for (let j = i + 1; j < pairs.length; j++) if (count++ % step === 0) yield [pairs[i]!, pairs[j]!]
}

function isLikely({ a, b, d, e }: Affine): boolean {
  const [across, down] = [Math.hypot(a, d), Math.hypot(b, e)]
  const fits = (scale: number): boolean => scale < MOST_SCALE && scale > 1 / MOST_SCALE
  return fits(across) && fits(down) && Math.abs(d / across) < MOST_TURN && Math.abs(b / down) < MOST_TURN
}

/** Printed words around a place tell how far the paper is off just there. */
const NEIGHBORS = 5

function mapped(box: Box, map: Affine, pairs: readonly Pair[], fromSize: Sized, toSize: Sized): Box {
  const [left, top] = [box.x * fromSize.widthPt, box.y * fromSize.heightPt]
  const corner = applied(map, { x: left, y: top })
  const opposite = applied(map, { x: left + box.w * fromSize.widthPt, y: top + box.h * fromSize.heightPt })
  const near = [...pairs]
    .sort((p, q) => away(p, left, top) - away(q, left, top))
    .slice(0, NEIGHBORS)
    .map(({ from, to }) => {
      const here = applied(map, from)
      return { x: to.x - here.x, y: to.y - here.y }
    })
  const off = { x: median(near.map(({ x }) => x)), y: median(near.map(({ y }) => y)) }
  return {
    x: (Math.min(corner.x, opposite.x) + off.x) / toSize.widthPt,
    y: (Math.min(corner.y, opposite.y) + off.y) / toSize.heightPt,
    w: Math.abs(opposite.x - corner.x) / toSize.widthPt,
    h: Math.abs(opposite.y - corner.y) / toSize.heightPt,
  }
}

const away = ({ from }: Pair, x: number, y: number): number => Math.hypot(from.x - x, from.y - y)
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0
