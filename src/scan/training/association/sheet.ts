import type { Field, ToldOf, UnitOf } from '../../../reading/association/fields.ts'
import type { Chance } from './chance.ts'

/** What a stretch of text is on the page that was drawn: the truth that the model learns. */
export type Tag = {
  readonly f: Field
  readonly of: ToldOf
  /** Which permit of the page, and which component; -1 for none. */
  readonly permit: number
  readonly comp: number
  readonly existing: boolean
  readonly unit: UnitOf
  /** The label that says what it is; 0 where nothing does. */
  readonly label: number
}
export type Part = {
  readonly t: string
  readonly v?: Tag
  /** This is the label of that number. */
  readonly l?: number
  readonly struck?: boolean
}
export type Said = string | Part
type Seg = { t: string; readonly part: Part }
export type DrawnWord = { segs: Seg[]; x: number; y: number; w: number; h: number; struck: boolean }

export type Style = { readonly size?: number; readonly gap?: number }

const NARROW = new Set("iljtfI.,:;'|!()[]-")
const WIDE = new Set('mwMW@%')

/** A page in points with everything that is written on it. */
export class Sheet {
  readonly words: DrawnWord[] = []
  readonly width: number
  readonly height: number
  roll: Chance
  size: number
  mono: boolean
  caps: 'title' | 'upper' | 'sentence' | 'lower'
  private labels = 0
  private readonly boxHeight: number
  private readonly stretch: number
  readonly lead: number
  permit = 0

  constructor(roll: Chance, width: number, height: number) {
    this.roll = roll
    this.width = width
    this.height = height
    this.size = roll.between(7.5, 11.5)
    this.mono = roll.chance(0.5)
    this.caps = roll.pick(['title', 'title', 'upper', 'upper', 'sentence', 'lower'])
    this.boxHeight = roll.between(0.62, 1.15)
    this.stretch = roll.between(0.85, 1.15)
    this.lead = roll.between(1.15, 2.3)
  }

  get line(): number {
    return this.size * this.lead
  }

  label(): number {
    this.labels += 1
    return this.labels
  }

  charWidth(character: string, size: number): number {
    if (this.mono) return 0.6 * size * this.stretch
    if (NARROW.has(character)) return 0.3 * size * this.stretch
    if (WIDE.has(character)) return 0.8 * size * this.stretch
    return (character >= 'A' && character <= 'Z' ? 0.64 : 0.5) * size * this.stretch
  }

  widthOf(said: readonly Said[] | string, size = this.size): number {
    const text = typeof said === 'string' ? said : said.map(textOf).join('')
    let width = 0
    for (const character of text) width += this.charWidth(character, size)
    return width
  }

  /** Writes parts one after the other from x; words part at spaces. Answers where the text ends. */
  run(x: number, y: number, said: readonly Said[], style: Style = {}): number {
    const size = style.size ?? this.size
    let at = x
    let open: DrawnWord | undefined
    for (const one of said) {
      const part: Part = typeof one === 'string' ? { t: one } : one
      for (const character of part.t) {
        const advance = this.charWidth(character, size)
        if (character === ' ') {
          open = undefined
          at += advance * (style.gap ?? 1)
          continue
        }
        if (!open) {
          open = { segs: [], x: at, y, w: 0, h: size * this.boxHeight, struck: false }
          this.words.push(open)
        }
        const last = open.segs.at(-1)
        if (last?.part === part) last.t += character
        else open.segs.push({ t: character, part })
        if (part.struck) open.struck = true
        at += advance
        open.w = at - open.x
      }
    }
    return at
  }

  /** The same, with lines broken within a width. Answers the y of the line after the last. */
  flow(x: number, y: number, wide: number, said: readonly Said[], style: Style = {}): number {
    const size = style.size ?? this.size
    const step = size * Math.min(this.lead, 1.5)
    const pieces = said.flatMap((one) => {
      const part: Part = typeof one === 'string' ? { t: one } : one
      return part.t.split(/(?<=\s)/).map((t) => ({ t, part }))
    })
    const lines: { t: string; part: Part }[][] = [[]]
    let at = 0
    for (const piece of pieces) {
      const width = this.widthOf(piece.t, size)
      if (at + width > wide && at > 0 && lines.at(-1)!.length > 0) {
        lines.push([])
        at = 0
      }
      lines.at(-1)!.push(piece)
      at += width
    }
    lines.forEach((line, row) => {
      this.runShared(x, y + row * step, line, size)
    })
    return y + lines.length * step
  }

  /** A part broken over lines stays one part, so that its value stays one value. */
  private runShared(x: number, y: number, line: readonly { t: string; part: Part }[], size: number): void {
    let at = x
    let open: DrawnWord | undefined
    for (const { t, part } of line)
      for (const character of t) {
        const advance = this.charWidth(character, size)
        if (/\s/.test(character)) {
          open = undefined
          at += advance
          continue
        }
        if (!open) {
          open = { segs: [], x: at, y, w: 0, h: size * this.boxHeight, struck: false }
          this.words.push(open)
        }
        const last = open.segs.at(-1)
        if (last?.part === part) last.t += character
        else open.segs.push({ t: character, part })
        if (part.struck) open.struck = true
        at += advance
        open.w = at - open.x
      }
  }
}

export const textOf = (said: Said): string => (typeof said === 'string' ? said : said.t)
