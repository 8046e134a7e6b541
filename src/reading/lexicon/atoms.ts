import type { Sense } from './sense.ts'
import { exactHits, nearestHit } from './trie.ts'

/** A known spelling in a text. */
export type Atom = {
  readonly start: number
  readonly end: number
  readonly senses: readonly Sense[]
  /** 1 where spelled exactly; less the more letters were misread. */
  readonly likeness: number
}

type Stream = { readonly text: string; readonly at: readonly number[] }

/** Letters and figures of a text, small, with the place of each; a mark that parts meanings stays as a bar. */
function streamOf(text: string): Stream {
  let squeezed = ''
  const at: number[] = []
  for (let index = 0; index < text.length; index++) {
    const character = text[index]!
    const kept = /[A-Za-z0-9#&]/.test(character)
      ? character.toLowerCase()
      : /[:;=|[\]☐☒☑✓✗✔]/.test(character)
        ? '|'
        : ''
    if (kept === '') continue
    squeezed += kept
    at.push(index)
  }
  return { text: squeezed, at }
}

/** Short forms are words of the language as well: only capitals or dots make them the trade's. */
const SHORT = 2

/**
 * The known spellings in a text, longest first from the left, never overlapping. A spelling begins where a word does
 * or where another spelling ended, for readers of pictures lose spaces; `misread` also takes near spellings.
 */
export function atomsIn(text: string, misread: boolean): readonly Atom[] {
  const stream = streamOf(text)
  const atoms: Atom[] = []
  let afterAtom = -1
  for (let index = 0; index < stream.text.length; ) {
    if (stream.text[index] === '|' || !(startsWord(text, stream, index) || index === afterAtom)) {
      index += 1
      continue
    }
    const rest = stream.text.slice(index, index + 60)
    const mayEnd = (length: number): boolean => endsWord(text, stream, index + length, misread)
    const hits = exactHits(rest, mayEnd).filter(
      (hit) => hit.length > SHORT || isShortForm(text, stream, index, hit.length),
    )
    const near =
      misread && mayBeMisread(text.slice(stream.at[index]!), rest) ? nearestHit(rest, mayEnd) : undefined
    const isPlain =
      hits[0] &&
      (!near ||
        near.errors === 0 ||
        hits[0].length >= near.length - 2 ||
        isSpelledOut(stream, index, near.length))
    const hit = isPlain ? hits[0] : near
    if (!hit) {
      index += 1
      continue
    }
    atoms.push({
      start: stream.at[index]!,
      end: stream.at[index + hit.length - 1]! + 1,
      senses: hit.senses,
      likeness: 1 - hit.errors / (hit.length + 1),
    })
    index += hit.length
    afterAtom = index
  }
  return atoms
}

/** Known spellings one after the other reach as far as the misread one would: `pit diameter` is no `pipe diameter`. */
function isSpelledOut({ text }: Stream, index: number, length: number): boolean {
  let at = index
  while (at < index + length) {
    const hit = exactHits(text.slice(at, at + 60), () => true)[0]
    if (!hit) return false
    at += hit.length
  }
  return true
}

/** A figure begins no label, and the small words of running text are read right or not at all. */
const mayBeMisread = (written: string, rest: string): boolean =>
  /^[a-z][a-z0-9#]{3}/.test(rest) &&
  !/^(?:with|the|and|was|were|that|this|each|wide|long|have|has|for)\b/i.test(written) &&
  // `24 in wide` is no misread `inside`, and `a 3 bedroom house` no label that begins with an A.
  !/^(?:(?:in|ft|gal)\s|[a-z]{1,2}\s+\d)/i.test(written)

const startsWord = (text: string, { at, text: squeezed }: Stream, index: number): boolean => {
  const place = at[index]!
  const before = text[place - 1]
  if (before === undefined || !/[A-Za-z0-9'’]/.test(before)) return true
  // `1000GAL`: letters after figures begin a word of their own.
  return /[0-9]/.test(before) && /[a-z]/.test(squeezed[index]!)
}

function endsWord(text: string, { at, text: squeezed }: Stream, end: number, misread: boolean): boolean {
  const last = at[end - 1]
  if (last === undefined) return false
  const after = text[last + 1]
  if (after === undefined || !/[A-Za-z0-9]/.test(after)) return !/^['’]s\b/.test(text.slice(last + 1))
  if (/[0-9]/.test(after) && /[a-z#]/.test(squeezed[end - 1]!)) return true
  // A lost space: what follows must be a spelling of its own.
  if (!misread || end < 4) return false
  return exactHits(squeezed.slice(end, end + 40), () => true).some(({ length }) => length >= 4)
}

/** `ST` is a street before it is a septic tank: one or two letters count only where the writing shows what they are. */
function isShortForm(text: string, { at }: Stream, index: number, length: number): boolean {
  const written = text.slice(at[index]!, at[index + length - 1]! + 1)
  const after = text.slice(at[index + length - 1]! + 1)
  if (JOINT_OR_UNIT.has(written.toLowerCase())) return true
  if (length === 1) {
    if (written === '#') return true
    return /^[ABLWD]$/.test(written) && (/^\s?[:=.–-]?\s?\d/.test(after) || text.trim() === written)
  }
  if (/[#.]/.test(written)) return true
  return /^[A-Z]{2}$/.test(written) && (PLAIN_SHORT.has(written) || /^\s*(?:[:=#]|no\b|\d)/i.test(after))
}

const JOINT_OR_UNIT = new Set(['of', 'in', 'is', 'a', 'an', 'at', 'or', 'on', 'ea', 'ft', 'no', 'to'])
/** Short forms that mean nothing else on a permit. */
const PLAIN_SHORT = new Set(['BR', 'LD', 'HT', 'CI'])
