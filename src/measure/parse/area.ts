import { ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../print/number.ts'
import { M_PER_FT, SQ_FT_PER_ACRE } from '../units.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { parseLength } from './length.ts'
import { parseQuantity, type UnitTable } from './quantity.ts'
import { LONGEST_TEXT } from './tidy.ts'

/** An area as someone wrote it, in sq ft; `halfStepSqFt` is half of the last place written. */
export type StatedArea = {
  readonly sqFt: number
  readonly halfStepSqFt: number
  readonly asWritten: string
  readonly approximate?: true
}

const AREA: UnitTable = {
  what: 'area',
  base: 'sq ft',
  of: ['area', 'areas'],
  like: '600 sq ft or 55.7 m²',
  accepted: 'sq ft, sq in, sq yd, m2 or acres',
  most: 100_000_000,
  units: [
    [1, 'sqft sqfeet sqfoot ft2 feet2 sf squareft squarefeet squarefoot ftsq feetsq'],
    [1 / 144, 'sqin in2 squarein squareinch squareinches'],
    [9, 'sqyd sqyds yd2 sy squareyd squareyard squareyards'],
    [1 / M_PER_FT ** 2, 'sqm m2 squarem squaremetre squaremetres squaremeter squaremeters'],
    [SQ_FT_PER_ACRE, 'ac acre acres'],
  ],
  refused: [
    ['ft in m feet \' "', 'is a length and not an area', []],
    ['ft3 m3 cuft gal', 'is a volume and not an area', []],
    ['sqftperbedroom sqftperbr sfperbr', 'is an area for each bedroom, not the whole area', []],
  ],
}

/** An area in any of the ways people write one: `600 sq ft`, `600 SF`, `600 ft²`, `55.7 m²`, `1.25 acres`. */
export function parseArea(
  text: string,
  { bare }: { readonly bare: 'sq ft' | 'refuse' } = { bare: 'refuse' },
): Result<StatedArea, ParseIssue> {
  const sides = text.length > LONGEST_TEXT ? [] : text.split(/ ?(?:[x×X]|\bby\b) ?/)
  const [length, width] = sides.map((side) => parseLength(side, { bare: 'ft' }))
  if (sides.length === 2 && length?.ok && width?.ok)
    return refuse(`${quoted(text)} is a length by a width: write the area`, [
      `${printSignificant(length.value.ft * width.value.ft, 12)} sq ft`,
    ])
  const read = parseQuantity(text, AREA, bare !== 'refuse')
  if (!read.ok) return read
  const { value, halfStep, approximate } = read.value
  return ok({
    sqFt: value,
    halfStepSqFt: halfStep,
    asWritten: text,
    ...(approximate ? { approximate } : {}),
  })
}
