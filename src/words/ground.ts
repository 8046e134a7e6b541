import type { Vertex } from '../geometry/position/polygon.ts'
import type { Region } from '../geometry/position/region.ts'
import { printLength } from '../measure/print/length.ts'

/** A search shorter than this, ft, needs no ends told: one stands in the middle and sees it all. */
const SEEN_FROM_ITS_MIDDLE = 8

/** The ground to search, as a shape that one can walk: `an arc about 84' long and 1'-8" wide, from … to …`. */
export function groundInWords(region: Region): string {
  const { form, lengthFt, widthFt, ends, acrossLine } = region
  const both = acrossLine ? ', on both sides of the line of the wall' : ''
  if (form === 'spot') return `a spot about ${toTheInch(Math.max(lengthFt, widthFt))} across${both}`
  const shape = `${form === 'arc' ? 'an arc' : 'a strip'} about ${rounded(lengthFt)} long and ${toTheInch(widthFt)} wide`
  const from = lengthFt < SEEN_FROM_ITS_MIDDLE ? '' : `, from ${spot(ends[0])} to ${spot(ends[1])}`
  return `${shape}${from}${both}`
}

/** A place from the wall: how far along it from corner A, and how far out. */
const spot = ([x, y]: Vertex): string => {
  const along =
    Math.abs(x) < 0.5 ? 'level with A' : `${rounded(Math.abs(x))} from A ${x > 0 ? 'toward' : 'away from'} B`
  const off =
    Math.abs(y) < 0.5 ? 'on its line' : `${rounded(Math.abs(y))} ${y > 0 ? 'out' : 'on the house side'}`
  return `${along} and ${off}`
}

/** Long ground to the foot, short ground to the inch. */
const rounded = (ft: number): string => (ft < 10 ? toTheInch(ft) : printLength(Math.round(ft)))
const toTheInch = (ft: number): string => printLength(Math.max(1, Math.round(ft * 12)) / 12)
