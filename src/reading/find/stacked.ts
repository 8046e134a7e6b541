import { around, joined } from '../layout/strip.ts'
import type { Unit } from '../layout/units.ts'
import { type TextUnit, textUnit } from './text-unit.ts'

/** Left ends or middles of two lines of one heading, in fractions of the page, and the gap between them in heights. */
const FLUSH = 0.012
const CLOSE = 0.8
const MOST_WORDS = 4

/**
 * Headings of narrow columns run over two lines: `Kind` above `of Work`. Two short texts, one right under the other, are
 * one where only both together spell a label; it stands where the lower one does, for its value lies below.
 */
export function withStackedLabels(units: readonly TextUnit[], misread: boolean): TextUnit[] {
  const gone = new Set<TextUnit>()
  const made = new Map<TextUnit, TextUnit>()
  for (const upper of units) {
    if (gone.has(upper) || !isShort(upper)) continue
    const lower = units.find((other) => !gone.has(other) && isShort(other) && isUnder(upper, other))
    const both = lower && stacked(upper, lower, misread)
    if (!lower || !both) continue
    gone.add(upper)
    made.set(lower, both)
  }
  return units.flatMap((unit) => (gone.has(unit) ? [] : [made.get(unit) ?? unit]))
}

const isShort = ({ prose, strip }: Unit): boolean =>
  !prose && !/\d|[:=]\s*$/.test(strip.text) && strip.text.split(' ').length <= MOST_WORDS

function isUnder(upper: Unit, lower: Unit): boolean {
  if (lower.row <= upper.row || lower.row > upper.row + 2) return false
  const gap = lower.box.y - (upper.box.y + upper.box.h)
  const high = Math.max(upper.box.h, lower.box.h)
  const isFlush =
    Math.abs(upper.box.x - lower.box.x) < FLUSH ||
    Math.abs(upper.box.x + upper.box.w / 2 - lower.box.x - lower.box.w / 2) < FLUSH
  return isFlush && gap > -0.5 * high && gap < CLOSE * high
}

/** One label from end to end that is not one of the two already. */
function stacked(upper: TextUnit, lower: TextUnit, misread: boolean): TextUnit | null {
  const unit: Unit = {
    ...lower,
    strip: joined([upper.strip, lower.strip]),
    box: around([upper.box, lower.box]),
  }
  const both = textUnit(unit, misread)
  const [group, ...more] = both.groups
  if (more.length > 0 || group?.is !== 'label' || group.weak) return null
  const isWhole = group.start <= 1 && group.end >= both.strip.text.length - 1
  const isKnown = [upper, lower].some((part) =>
    part.groups.some(
      (known) =>
        known.is === 'label' &&
        !known.weak &&
        known.asks[0] === group.asks[0] &&
        known.kind === group.kind &&
        known.place === group.place,
    ),
  )
  return isWhole && !isKnown ? both : null
}
