import { describeSitePlan } from './describe.ts'
import { escaped, FOOT, type Frame, frameOf, r, WIDTH } from './drawing/frame.ts'
import { house, houseBoxes, north } from './drawing/house.ts'
import { type Box, type Placed, placeLabels, SIZE, type Wanted } from './drawing/labels.ts'
import { DASH, FND, groundOf, INK, REC, SOFT, symbol } from './drawing/symbols.ts'
import { pipeLabels, pipes, ringLabels, rings } from './drawing/under.ts'
import type { Mark } from './mark.ts'
import type { SitePlan } from './plan.ts'

/**
 * The plan as SVG, to scale, the reference wall along the top of the open ground (turned so that the front of the
 * house is up where the wall is front or rear). Recorded places are open and dashed, found ones filled, so that the two
 * differ without color. No script, no style from outside; every text is escaped.
 */
export function drawSitePlan(plan: SitePlan): string {
  const frame = frameOf(plan)
  const { height, scale } = frame
  const named = placeLabels(
    [...markLabels(plan.marks, frame), ...ringLabels(plan, frame), ...pipeLabels(plan, frame)],
    [...houseBoxes(plan, frame), ...plan.marks.map((mark) => markBox(mark, frame))],
    height,
  )
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="plan-title plan-words" font-family="system-ui, sans-serif" font-size="${SIZE}">`,
    `<title id="plan-title">Site plan to scale from ties to the house corners</title>`,
    `<desc id="plan-words">${escaped(describeSitePlan(plan).join(' '))}</desc>`,
    `<clipPath id="plan-sheet"><rect width="${WIDTH}" height="${height - FOOT}"/></clipPath>`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    ...rings(plan, frame),
    ...pipes(plan, frame),
    house(plan, frame),
    ...plan.marks.map((mark) => groundOf(mark, frame)).filter((ground) => ground !== ''),
    ...plan.marks.map(({ kind, by, x, y }) => symbol(kind, by, ...frame.at(x, y))),
    ...named.map(text),
    north(plan.reference.bearingDeg, frame.turn),
    scaleBar(scale, height),
    key(plan, height),
    '</svg>',
  ].join('\n')
}

/** Two marks of one thing closer than their symbols are named once. */
const ONE_PLACE = 14

function markLabels(marks: readonly Mark[], { at }: Frame): readonly Wanted[] {
  const done = new Set<Mark>()
  return marks.flatMap((mark) => {
    if (done.has(mark)) return []
    const [x, y] = at(mark.x, mark.y)
    const twin = marks.find((other) => {
      const [ox, oy] = at(other.x, other.y)
      return other.label === mark.label && other.by !== mark.by && Math.hypot(ox - x, oy - y) < ONE_PLACE
    })
    if (twin) done.add(twin)
    const by = twin ? 'recorded and found' : mark.by
    const two = mark.mirror && !(twin && !twin.mirror) ? ', one of two' : ''
    return [{ words: `${mark.label} (${by}${two})`, x, y, clear: 13 }]
  })
}

function markBox({ x, y }: Mark, { at }: Frame): Box {
  const [px, py] = at(x, y)
  return { x: px - 12, y: py - 11, w: 24, h: 22 }
}

const text = ({ words, at: [x, y], leader }: Placed): string =>
  `${leader ? `<path d="M${leader.slice(0, 2).map(r).join(' ')}L${leader.slice(2).map(r).join(' ')}" stroke="${SOFT}" stroke-width="1"/>` : ''}<text x="${r(x)}" y="${r(y)}" text-anchor="middle" fill="${INK}" stroke="#ffffff" stroke-width="3" paint-order="stroke">${escaped(words)}</text>`

function scaleBar(scale: number, height: number): string {
  const feet = [100, 50, 20, 10, 5, 2, 1].find((length) => length * scale <= WIDTH / 3) ?? 1
  const y = height - FOOT + 22
  return `<path d="M16 ${y - 6}V${y}H${r(16 + feet * scale)}V${y - 6}" fill="none" stroke="${INK}" stroke-width="2"/><text x="${r(24 + feet * scale)}" y="${y}" fill="${INK}">${feet} ft</text>`
}

function key({ rings: list, lines }: SitePlan, height: number): string {
  const y = height - 50
  const words = (x: number, at: number, says: string) =>
    `<text x="${x}" y="${at}" fill="${SOFT}">${says}</text>`
  const dotted = list.length > 0 && 'dotted: setback from the well'
  const pipe = lines.some(({ path }) => path) && 'pipe: its way is not known, drawn straight'
  const more = ['shaded: it lies in there, 95 %', dotted].filter((it) => it !== false)
  return [
    symbol('tank', 'recorded', 28, y - 4),
    words(46, y, 'on record'),
    `<path d="M118 ${y - 4}h26" stroke="${REC}" stroke-width="2"${DASH}/>`,
    symbol('tank', 'found', 228, y - 4),
    words(242, y, 'found'),
    `<path d="M284 ${y - 4}h26" stroke="${FND}" stroke-width="2"/>`,
    words(16, y + 20, more.join(' · ')),
    pipe ? words(16, y + 38, pipe) : '',
  ].join('')
}
