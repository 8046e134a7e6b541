import { ok, type Result } from '../../base/result.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { type BareLength, parseLength, type StatedLength } from './length.ts'
import { LONGEST_TEXT } from './tidy.ts'

const BETWEEN = / ?(?:[x×X✕]|\bby\b) ?/
/** A unit at the end of the last length, which may stand for all of them. */
const LAST_UNIT = /(?:'|"|′|″|”|’|[A-Za-z]+\.?)\s*$/

/**
 * Two or three lengths written with × between: `8' x 4' x 4'`, `8 × 4 × 4 ft` (the one unit stands for all), `96 by 48
 * by 48 in`. The order is the writer's: which is the length and which the depth, the text does not say. With no unit
 * anywhere it is refused, unless `bare` says what the numbers mean.
 */
export function parseDimensions(
  text: string,
  { bare }: BareLength = { bare: 'refuse' },
): Result<readonly StatedLength[], ParseIssue> {
  if (text.length > LONGEST_TEXT)
    return refuse(`${quoted(text)} is ${text.length} characters long: write at most ${LONGEST_TEXT}`)
  const sides = text.trim().split(BETWEEN)
  if (sides.length < 2 || sides.length > 3)
    return refuse(`${quoted(text)} is not two or three lengths: write them like 8' x 4' x 4'`)
  const unit = LAST_UNIT.exec(sides.at(-1)!)?.[0].trim() ?? ''
  const shared = sides.slice(0, -1).every((side) => /^[\d.,]+$/.test(side.trim()))
  const lengths: StatedLength[] = []
  for (const side of sides) {
    const own = shared && side !== sides.at(-1) && unit !== '' ? `${side} ${unit}` : side
    const length = parseLength(own, { bare })
    if (!length.ok) return length
    lengths.push({ ...length.value, asWritten: side })
  }
  return ok(lengths)
}
