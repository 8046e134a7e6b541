import type { Ask, Sense } from './sense.ts'
import { SPELLINGS } from './spellings.ts'

export type Node = { readonly next: Map<string, Node>; senses: Sense[]; length: number }

const grow = (length: number): Node => ({ next: new Map(), senses: [], length })

function planted(): Node {
  const root = grow(0)
  for (const { text, sense } of SPELLINGS) {
    let node = root
    for (const character of text) {
      let child = node.next.get(character)
      if (!child) {
        child = grow(node.length + 1)
        node.next.set(character, child)
      }
      node = child
    }
    if (text !== '') node.senses.push(sense)
  }
  return root
}

const ROOT = planted()

export type Hit = { readonly length: number; readonly senses: readonly Sense[]; readonly errors: number }

/** The spellings that `text` begins with, longest first; `mayEnd` says where in it one may end. */
export function exactHits(text: string, mayEnd: (length: number) => boolean): Hit[] {
  const hits: Hit[] = []
  let node: Node | undefined = ROOT
  for (let at = 0; at < text.length; at++) {
    node = node.next.get(text[at]!)
    if (!node) break
    if (node.senses.length === 0) continue
    if (mayEnd(at + 1)) hits.push({ length: at + 1, senses: node.senses, errors: 0 })
    else if (text[at + 1] === 's' && mayEnd(at + 2))
      hits.push({ length: at + 2, senses: node.senses, errors: 0 })
  }
  return hits.reverse()
}

/** Misread letters that a spelling of this length may have and still be known. */
const forgiven = (length: number): number => (length < 5 ? 0 : length < 9 ? 1 : length < 15 ? 2 : 3)
/** Shorter spellings are too near to others to be told from a misreading. */
const LEAST_LENGTH = 4
const MOST_FORGIVEN = 3
const FAR = 99
const LETTERED: ReadonlySet<Ask> = new Set(['cornerA', 'cornerB', 'tieA', 'tieB'])

/** A number is no misread word, however near. */
const mostlyFigures = (text: string): boolean => text.replace(/[^0-9]/g, '').length * 3 > text.length

/** Figures that stand for letters in a misread word. */
const AS_LETTER: Record<string, string> = { '0': 'o', '1': 'l', '5': 's', '8': 'b', '6': 'b', '9': 'g' }
const same = (read: string, meant: string): boolean =>
  read === meant ||
  AS_LETTER[read] === meant ||
  (read === '1' && meant === 'i') ||
  (read === 'l' && meant === 'i')

/**
 * The spelling nearest to what `text` begins with, by edit distance (Levenshtein), a row of the table for each letter
 * down the tree; undefined where none is near enough.
 */
export function nearestHit(text: string, mayEnd: (length: number) => boolean): Hit | undefined {
  const reach = text.slice(0, 44)
  let best: Hit | undefined
  const better = (hit: Hit): boolean => !best || hit.length - 3 * hit.errors > best.length - 3 * best.errors
  const walk = (node: Node, above: readonly number[], last: string): void => {
    if (node.senses.length > 0 && node.length >= LEAST_LENGTH) {
      const allowed = forgiven(node.length)
      const lettered = node.senses.some((sense) => sense.is === 'asks' && LETTERED.has(sense.ask))
      for (let end = 1; end < above.length; end++) {
        const errors = above[end]!
        if (errors > allowed || !mayEnd(end) || mostlyFigures(reach.slice(0, end))) continue
        // `corner A` and `corner B` differ by their last letter alone.
        if (lettered && reach[end - 1] !== last) continue
        const hit = { length: end, senses: node.senses, errors }
        if (better(hit)) best = hit
      }
    }
    for (const [letter, child] of node.next) {
      // A spelling begins where it begins: its first letter may be misread and not be missing.
      const row = new Array<number>(reach.length + 1).fill(FAR)
      let least = FAR
      // So many letters in, no more than that many are missing or too many: what lies further off is FAR in any case.
      const depth = child.length
      const furthest = Math.min(reach.length, depth + MOST_FORGIVEN)
      for (let at = Math.max(1, depth - MOST_FORGIVEN); at <= furthest; at++) {
        const cost = Math.min(
          above[at]! + 1,
          row[at - 1]! + 1,
          above[at - 1]! + (same(reach[at - 1]!, letter) ? 0 : 1),
        )
        row[at] = cost
        if (cost < least) least = cost
      }
      if (least <= MOST_FORGIVEN) walk(child, row, letter)
    }
  }
  walk(
    ROOT,
    Array.from({ length: reach.length + 1 }, (_, index) => (index === 0 ? 0 : FAR)),
    '',
  )
  return best
}
