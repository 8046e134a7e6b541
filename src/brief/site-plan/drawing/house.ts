import type { SitePlan } from '../plan.ts'
import { escaped, type Frame, r, WIDTH } from './frame.ts'
import type { Box } from './labels.ts'
import { INK, SOFT } from './symbols.ts'

/** The wall between the corners, the house behind it as far as it is known, and where its front is. */
export function house({ reference }: SitePlan, { at, turn, house: deep }: Frame): string {
  const [ax, ay] = at(0, 0)
  const [bx] = at(reference.baselineFt, 0)
  const back = ay - turn * deep
  const middle = (ay + back) / 2
  const lines = [reference.wall ? `house, ${reference.wall} wall` : 'house', frontWay(reference.wall)].filter(
    (line) => line !== null,
  )
  const fits = Math.abs(bx - ax) > 90 && deep > 15 * lines.length
  const texts = fits
    ? lines.map(
        (line, at) =>
          `<text x="${r((ax + bx) / 2)}" y="${r(middle + 5 + (at - (lines.length - 1) / 2) * 15)}" text-anchor="middle" fill="${INK}">${escaped(line)}</text>`,
      )
    : []
  return [
    `<path d="M${r(ax)} ${r(back)}V${r(ay)}H${r(bx)}V${r(back)}" fill="#eceff1" stroke="none"/>`,
    `<path d="M${r(ax)} ${r(back)}V${r(ay)}M${r(bx)} ${r(ay)}V${r(back)}" fill="none" stroke="${INK}" stroke-width="1.5" stroke-dasharray="2 3"/>`,
    `<path d="M${r(ax)} ${r(ay)}H${r(bx)}" stroke="${INK}" stroke-width="3.5"/>`,
    corner('A', ax, ay, ax < bx ? -1 : 1),
    corner('B', bx, ay, ax < bx ? 1 : -1),
    ...texts,
  ].join('\n')
}

/** Page up is the front of the house for a front wall and for a rear one; of a side wall nobody says. */
const frontWay = (wall: SitePlan['reference']['wall']): string | null =>
  wall === 'rear' ? 'front ↑' : wall === 'front' ? 'rear ↓' : null

const corner = (name: string, x: number, y: number, way: 1 | -1): string =>
  `<circle cx="${r(x)}" cy="${r(y)}" r="4.5" fill="${INK}"/><text x="${r(x + way * 13)}" y="${r(y + 5)}" text-anchor="middle" font-weight="700" fill="${INK}">${name}</text>`

/** What no label may lie over. */
export function houseBoxes({ reference }: SitePlan, { at, turn, house: deep }: Frame): readonly Box[] {
  const [ax, ay] = at(0, 0)
  const [bx] = at(reference.baselineFt, 0)
  const x = Math.min(ax, bx) - 20
  const y = turn > 0 ? ay - deep : ay
  return [
    { x: x + 20, y: y - 2, w: Math.abs(bx - ax), h: deep + 4 },
    { x, y: ay - 8, w: 20, h: 16 },
    { x: Math.max(ax, bx), y: ay - 8, w: 20, h: 16 },
    { x: WIDTH - 60, y: 0, w: 60, h: 64 },
  ]
}

/** Page up bears (A to B) − 90°; turned half round for a front wall. */
export function north(bearingDeg: number | null, turn: number): string {
  if (bearingDeg === null) {
    return `<text x="${WIDTH - 8}" y="20" text-anchor="end" fill="${SOFT}">north not known</text>`
  }
  const angle = 90 - bearingDeg + (turn < 0 ? 180 : 0)
  return `<g transform="translate(${WIDTH - 30} 34) rotate(${r(angle)})"><path d="M0 14V-12M0 -14L-6 -4M0 -14L6 -4" fill="none" stroke="${INK}" stroke-width="2"/><text y="-18" text-anchor="middle" font-weight="700" fill="${INK}">N</text></g>`
}
