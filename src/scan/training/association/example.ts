import { type Encoded, encode } from '../../../reading/association/encode.ts'
import { FIELDS, TOLD_OF, UNITS_OF } from '../../../reading/association/fields.ts'
import { type Piece, piecesOf } from '../../../reading/association/pieces.ts'
import type { PageWords } from '../../../reading/page-words.ts'
import { Chance } from './chance.ts'
import { type SeenWord, seenPage } from './noise.ts'
import { drawPage } from './page.ts'
import type { Part } from './sheet.ts'

/** What the model should say of each piece of a page. */
export type Targets = {
  readonly field: Uint8Array
  readonly begins: Uint8Array
  readonly of: Uint8Array
  readonly existing: Uint8Array
  readonly unit: Uint8Array
  readonly permit: Int16Array
  readonly component: Int16Array
  /** Place of the first piece of the label that says what a value is; its own place where nothing does. */
  readonly label: Int16Array
}
/** A page as examples are made of it: `page` is what a reader would hand over. */
export type Example = {
  readonly page: PageWords
  readonly encoded: Encoded
  readonly targets: Targets
  readonly pieces: readonly Piece[]
}

/** Longer pages are cut at their end: memory while training goes with the square of it. */
export const MOST_PIECES = 640

/** The page of a seed as the model meets it, and what it should make of it. */
export function makeExample(seed: number): Example | null {
  const sheet = drawPage(seed)
  const roll = new Chance(seed ^ 0x5bd1e995)
  const isPicture = roll.chance(0.6)
  const words = seenPage(sheet, roll, isPicture)
  const pieces = piecesOf(words).slice(0, MOST_PIECES)
  if (pieces.length < 4) return null
  return {
    page: {
      page: 1,
      widthPt: sheet.width,
      heightPt: sheet.height,
      turn: 0,
      levelDegrees: 0,
      readBy: isPicture ? 'picture' : 'text-layer',
      words,
      secondWords: null,
    },
    encoded: encode(pieces, sheet.height / sheet.width, isPicture),
    targets: targetsOf(pieces, words),
    pieces,
  }
}

function targetsOf(pieces: readonly Piece[], words: readonly SeenWord[]): Targets {
  const count = pieces.length
  const targets: Targets = {
    field: new Uint8Array(count),
    begins: new Uint8Array(count),
    of: new Uint8Array(count),
    existing: new Uint8Array(count),
    unit: new Uint8Array(count),
    permit: new Int16Array(count).fill(-1),
    component: new Int16Array(count).fill(-1),
    label: new Int16Array(count),
  }
  const partOf = ({ word, from, text }: Piece): Part => {
    // The part that most letters are of: a lost space may glue a label to its value.
    const own = words[word]!.parts.slice(from, from + Math.max(1, text.length))
    const counts = new Map<Part, number>()
    for (const part of own) counts.set(part, (counts.get(part) ?? 0) + (part.v && !part.struck ? 1.01 : 1))
    return [...counts].sort((a, b) => b[1] - a[1])[0]![0]
  }
  const parts = pieces.map(partOf)
  const labels = new Map<number, number[]>()
  const met = new Set<Part>()
  parts.forEach((part, index) => {
    if (part.l && part.l > 0 && !met.has(part)) labels.set(part.l, [...(labels.get(part.l) ?? []), index])
    met.add(part)
  })
  const begun = new Set<Part>()
  parts.forEach((part, index) => {
    targets.label[index] = index
    const { v } = part
    if (!v || part.struck) return
    targets.field[index] = FIELDS.indexOf(v.f)
    targets.begins[index] = begun.has(part) ? 0 : 1
    begun.add(part)
    targets.of[index] = TOLD_OF.indexOf(v.of)
    targets.existing[index] = v.existing ? 1 : 0
    targets.unit[index] = UNITS_OF.indexOf(v.unit)
    targets.permit[index] = v.permit
    targets.component[index] = v.comp
    // A heading that comes again: the last one before the value, else the first after it.
    const places = v.label > 0 ? labels.get(v.label) : undefined
    if (places) targets.label[index] = places.findLast((at) => at < index) ?? places[0]!
  })
  return targets
}
