import type { Row } from '../layout/rows.ts'
import { type Excerpt, excerpt, joined, type Strip } from '../layout/strip.ts'
import { type Atom, atomsIn } from '../lexicon/atoms.ts'
import type { Sense } from '../lexicon/sense.ts'
import type { Word } from '../page-words.ts'

/** A ticked choice: what it means, and where it stands. */
export type Tick = {
  readonly sense: Choice
  readonly excerpt: Excerpt
  readonly row: number
  readonly likeness: number
}
type Choice = Extract<Sense, { is: 'work' | 'material' | 'mention' | 'shape' }>

export type Ticked = {
  readonly ticks: readonly Tick[]
  /** Words that are boxes, or choices that were not ticked: they say nothing of the system. */
  readonly spent: ReadonlySet<Word>
}

/** A reader of pictures may lose the half of a box that ends a line. */
const BOX = /\[\s*$|\[\s?[xX✓✔*]?\s?\]|\(\s?[xX✓✔*]?\s?\)|[☒☑✔✓☐□■]|(?<![\w'"’”.,/-])[xX](?![\w'"’”.,/-])/g
const FULL = /[xX✓✔☒☑■*]/

/** Boxes typed or printed as text, the choices beside them, and which are ticked. */
export function ticksIn(rows: readonly Row[], misread: boolean): Ticked {
  const spent = new Set<Word>()
  const ticks = rows.flatMap((row, index) =>
    ticksInRow(joined(row.phrases.map(({ strip }) => strip)), index, misread, spent),
  )
  return { ticks, spent }
}

type Mark = { readonly start: number; readonly end: number; readonly full: boolean; readonly bare: boolean }

function ticksInRow(strip: Strip, row: number, misread: boolean, spent: Set<Word>): Tick[] {
  const { text } = strip
  const marks = [...text.matchAll(BOX)]
    .map(
      (match): Mark => ({
        start: match.index,
        end: match.index + match[0].length,
        full: FULL.test(match[0]),
        bare: match[0].length === 1 && /[xX]/.test(match[0]),
      }),
    )
    .filter((mark) => !mark.bare || !isTimes(text, mark))
  if (marks.length === 0) return []
  const choices = atomsIn(text, misread).flatMap((atom) => {
    const sense = choiceOf(atom)
    return sense ? [{ atom, sense }] : []
  })
  if (choices.length === 0) return []
  const trailing = marksTrail(marks, choices)
  const ticked: Tick[] = []
  const met = new Set<Atom>()
  for (const mark of marks) {
    const beside = choices.filter(({ atom }) => !met.has(atom))
    const own = trailing
      ? beside.findLast(({ atom }) => atom.end <= mark.start && mark.start - atom.end <= 3)
      : beside.find(({ atom }) => atom.start >= mark.end && onlyFiller(text.slice(mark.end, atom.start)))
    spend(strip, mark.start, mark.end, spent)
    if (!own) continue
    met.add(own.atom)
    if (mark.full) {
      ticked.push({
        sense: own.sense,
        excerpt: excerpt(strip, Math.min(mark.start, own.atom.start), Math.max(mark.end, own.atom.end)),
        row,
        likeness: own.atom.likeness,
      })
      if (own.sense.is !== 'mention') spend(strip, own.atom.start, own.atom.end, spent)
    } else spend(strip, own.atom.start, own.atom.end, spent)
  }
  // Boxes drawn as lines leave no mark where they are empty: beside a ticked choice, its like are unticked.
  const classes = new Set(ticked.map(({ sense }) => sense.is))
  for (const { atom, sense } of choices) {
    if (!met.has(atom) && classes.has(sense.is) && marks.every((mark) => mark.bare))
      spend(strip, atom.start, atom.end, spent)
  }
  return ticked
}

/** `8'-6" X 3'-6"`: an X between figures multiplies. */
const isTimes = (text: string, { start, end }: Mark): boolean =>
  /[\d'"’”.a-z)]\s*$/.test(text.slice(Math.max(0, start - 3), start)) && /^\s*[\d.(]/.test(text.slice(end))

function choiceOf(atom: Atom): Choice | undefined {
  for (const is of ['work', 'mention', 'material', 'shape'] as const) {
    const sense = atom.senses.find((known): known is Choice => known.is === is)
    if (sense) return sense
  }
  return undefined
}

const onlyFiller = (gap: string): boolean => /^[\s.:_-]*(?:(?:a|the|to|pre|for)\s+)?$/i.test(gap)

/** `New [X]  Repair [ ]`: of choices of one kind the first stands right before the first box. */
function marksTrail(
  marks: readonly Mark[],
  choices: readonly { readonly atom: Atom; readonly sense: Choice }[],
): boolean {
  const alike = choices.filter(
    ({ sense }) => choices.filter((other) => other.sense.is === sense.is).length > 1,
  )
  const first = (alike.length > 0 ? alike : choices)[0]!.atom
  const mark = marks.find(({ start }) => start >= first.end)
  // Drawn boxes leave a bare X: with a choice right after it, it ticks that one.
  if (marks.every(({ bare }) => bare) && choices.some(({ atom }) => atom.start >= marks.at(-1)!.end))
    return false
  return first.end <= marks[0]!.start && mark !== undefined && mark.start - first.end <= 3
}

function spend(strip: Strip, start: number, end: number, spent: Set<Word>): void {
  for (const { at, length, word } of strip.spots) if (at < end && at + length > start) spent.add(word)
}
