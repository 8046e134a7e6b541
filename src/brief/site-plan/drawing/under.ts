import { printLength } from '../../../measure/print/length.ts'
import type { SitePlan } from '../plan.ts'
import { type Frame, r } from './frame.ts'
import type { Wanted } from './labels.ts'
import { DASH, FND, INK, inkOf } from './symbols.ts'

/** Lines of pipe. One that was replaced has the old pipe beside it, crossed out. */
export function pipes({ lines }: SitePlan, { at }: Frame): readonly string[] {
  return lines.flatMap(({ by, path, change }) => {
    if (!path) return []
    const [[x1, y1], [x2, y2]] = [at(path[0].x, path[0].y), at(path[1].x, path[1].y)]
    const pipe = (ink: string, more: string, off = 0): string => {
      const far = Math.hypot(x2 - x1, y2 - y1) || 1
      const [ox, oy] = [(-(y2 - y1) / far) * off, ((x2 - x1) / far) * off]
      return `<path d="M${r(x1 + ox)} ${r(y1 + oy)}L${r(x2 + ox)} ${r(y2 + oy)}" fill="none" stroke="${ink}" stroke-width="2"${more}/>`
    }
    if (!change) return [pipe(inkOf(by), by === 'recorded' ? DASH : '')]
    const [mx, my] = [(x1 + x2) / 2, (y1 + y2) / 2]
    return [
      pipe(FND, ''),
      pipe(inkOf('recorded'), DASH, 5),
      `<path d="M${r(mx - 5)} ${r(my - 5)}L${r(mx + 5)} ${r(my + 5)}M${r(mx + 5)} ${r(my - 5)}L${r(mx - 5)} ${r(my + 5)}" stroke="${INK}" stroke-width="1.5"/>`,
    ]
  })
}

/** A line is named where it was replaced: the others are told by what they join. */
export const pipeLabels = ({ lines }: SitePlan, { at }: Frame): readonly Wanted[] =>
  lines.flatMap(({ label, path, change }) => {
    if (!path || !change) return []
    const [x, y] = at((path[0].x + path[1].x) / 2, (path[0].y + path[1].y) / 2)
    const words =
      change.permit === null ? `${label} replaced, no permit` : `${label}, permit ${change.permit}`
    return [{ words, x, y, clear: 9 }]
  })

/** Setbacks around the wells, cut at the edge, and how far what lies within them is. */
export const rings = ({ rings: list, within }: SitePlan, { at, scale }: Frame): readonly string[] => [
  ...list.map(({ x, y, ft }) => {
    const [cx, cy] = at(x, y)
    return `<circle cx="${r(cx)}" cy="${r(cy)}" r="${r(ft * scale)}" fill="none" stroke="${INK}" stroke-width="1" stroke-dasharray="1 4" clip-path="url(#plan-sheet)"/>`
  }),
  ...within.map(({ from, to }) => {
    const [[x1, y1], [x2, y2]] = [at(from.x, from.y), at(to.x, to.y)]
    return `<path d="M${r(x1)} ${r(y1)}L${r(x2)} ${r(y2)}" fill="none" stroke="${INK}" stroke-width="1"/>`
  }),
]

export const ringLabels = ({ within }: SitePlan, { at }: Frame): readonly Wanted[] =>
  within.map(({ from, to, distanceFt, ft }) => {
    const [x, y] = at((from.x + to.x) / 2, (from.y + to.y) / 2)
    return { words: `${printLength(Math.round(distanceFt * 12) / 12)}, rule ${ft} ft`, x, y, clear: 5 }
  })
