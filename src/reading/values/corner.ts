import { lettersApart } from './near-word.ts'

/** What a corner or a point of a house is told by (common practice): which side, and of what. */
const SIDES =
  'front rear back left right north south east west northeast northwest southeast southwest ne nw se sw main middle near far upper lower inside outside'
const OF_WHAT =
  'corner cor house garage porch building dwelling residence chimney steps step door foundation home shed deck wall side wing addition basement cellar barn trailer bldg'
const JOINTS = 'of the at and to on a'
const sides = new Set(SIDES.split(' '))
const ofWhat = new Set(OF_WHAT.split(' '))
const known = [...sides, ...ofWhat, ...JOINTS.split(' ')]

export type CornerWords = {
  readonly text: string
  /** Every word is one that tells corners, and both a side and what it is a side of are named. */
  readonly isWhole: boolean
}

/**
 * A corner as it must have been written where letters of it were misread: each word is the only one of the trade's that
 * is a letter away from what was read (`lelt`, `comer`), and stray letters are left out.
 */
export function cornerWords(read: string): CornerWords {
  const words = read.split(/\s+/).flatMap((word) => corrected(word) ?? [])
  const plain = words.map(bare)
  return {
    text: words.join(' '),
    isWhole:
      plain.every((word) => known.includes(word)) &&
      plain.some((word) => sides.has(word)) &&
      plain.some((word) => ofWhat.has(word)),
  }
}

const bare = (word: string): string => word.toLowerCase().replace(/[^a-z]/g, '')

function corrected(word: string): string | null {
  const letters = bare(word)
  if (letters.length < 2) return /^[aA]$|\d/.test(word) ? word : null
  if (known.includes(letters) || letters.length < 4 || /\d/.test(word)) return word
  // Two letters run together look like one: `comer`.
  const apart = known.filter(
    (other) =>
      other.length >= 4 && (lettersApart(letters, other) === 1 || letters.replace('m', 'rn') === other),
  )
  return apart.length === 1 ? apart[0]! : word
}
