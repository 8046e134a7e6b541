import type { ComponentKind } from '../../records/component.ts'
import { describeSitePlan } from './describe.ts'
import type { Mark, SitePlan } from './plan.ts'

const WIDTH = 720
const MARGIN = 56
/** Room beside the house wall that is always shown, feet. */
const AROUND = 12

/**
 * The plan as SVG, to scale, the reference wall along the top of the open ground (turned so that the front of the
 * house is up where the wall is front or rear). Recorded places are open and dashed, found ones filled, so that the two
 * differ without colour. No script, no style from outside; every text is escaped.
 */
export function drawSitePlan(plan: SitePlan): string {
  const { reference, marks } = plan
  const turn = reference.wall === 'front' ? -1 : 1
  const reach = marks.flatMap(({ x, y, ellipse }) => [
    [x - ellipse.semiMajor, y - ellipse.semiMajor],
    [x + ellipse.semiMajor, y + ellipse.semiMajor],
  ])
  const xs = [0, reference.baselineFt, ...reach.map(([x]) => x!)].map((x) => turn * x)
  const ys = [-AROUND, AROUND, ...reach.map(([, y]) => y!)].map((y) => turn * y)
  const [left, right, top, bottom] = [
    Math.min(...xs) - 4,
    Math.max(...xs) + 4,
    Math.min(...ys),
    Math.max(...ys),
  ]
  const scale = (WIDTH - 2 * MARGIN) / Math.max(right - left, 1)
  const height = Math.round((bottom - top) * scale + 2 * MARGIN + 28)
  const at = (x: number, y: number): readonly [number, number] => [
    MARGIN + (turn * x - left) * scale,
    MARGIN + (turn * y - top) * scale,
  ]
  const words = describeSitePlan(plan)
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="plan-title plan-words" font-family="system-ui, sans-serif" font-size="13">`,
    `<title id="plan-title">Site plan to scale from ties to the house corners</title>`,
    `<desc id="plan-words">${escaped(words.join(' '))}</desc>`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    house(plan, at, turn),
    ...marks.map((mark) => drawn(mark, at, scale)),
    ...labels(marks, at),
    scaleBar(scale, height),
    north(reference.bearingDeg, turn),
    key(height),
    '</svg>',
  ].join('\n')
}

type At = (x: number, y: number) => readonly [number, number]
const r = (value: number): string => String(Math.round(value * 10) / 10)
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)

function house({ reference }: SitePlan, at: At, turn: number): string {
  const [ax, ay] = at(0, 0)
  const [bx, by] = at(reference.baselineFt, 0)
  const stub = 26 * turn
  const name = reference.wall ? `${reference.wall} wall of the house` : 'wall of the house'
  return [
    `<path d="M${r(ax)} ${r(ay - stub)}V${r(ay)}H${r(bx)}V${r(by - stub)}" fill="#eceff1" stroke="#263238" stroke-width="3"/>`,
    `<text x="${r((ax + bx) / 2)}" y="${r(ay - stub / 2 + 4)}" text-anchor="middle" fill="#263238">${escaped(name)}</text>`,
    corner('A', ax, ay, turn),
    corner('B', bx, by, turn),
  ].join('\n')
}

const corner = (name: string, x: number, y: number, turn: number): string =>
  `<circle cx="${r(x)}" cy="${r(y)}" r="4" fill="#263238"/><text x="${r(x)}" y="${r(y + (turn > 0 ? 18 : -9))}" text-anchor="middle" font-weight="700">${name}</text>`

/** Tanks are boxes, pits and wells rings, absorption bars, all else a lozenge. */
function shape(kind: ComponentKind): string {
  switch (kind) {
    case 'tank':
    case 'pump-chamber':
    case 'distribution-box':
      return 'M-8 -6H8V6H-8Z'
    case 'seepage-pit':
    case 'cesspool':
    case 'well':
      return 'M-8 0A8 8 0 1 0 8 0A8 8 0 1 0 -8 0Z'
    case 'trench':
    case 'bed':
    case 'chambers':
    case 'mound':
    case 'drip-field':
      return 'M-12 -4H12V4H-12Z'
    default:
      return 'M0 -8L8 0L0 8L-8 0Z'
  }
}

function drawn({ kind, by, x, y, ellipse }: Mark, at: At, scale: number): string {
  const [px, py] = at(x, y)
  const recorded = by === 'recorded'
  const dash = recorded ? ' stroke-dasharray="5 4"' : ''
  const ink = recorded ? '#0b4f8a' : '#7a2e0e'
  return [
    `<ellipse cx="${r(px)}" cy="${r(py)}" rx="${r(Math.max(ellipse.semiMajor * scale, 1))}" ry="${r(Math.max(ellipse.semiMinor * scale, 1))}" transform="rotate(${r(ellipse.angleDeg)} ${r(px)} ${r(py)})" fill="none" stroke="${ink}" stroke-width="1.2"${dash}/>`,
    `<path d="${shape(kind)}" transform="translate(${r(px)} ${r(py)})" fill="${recorded ? '#ffffff' : ink}" stroke="${ink}" stroke-width="2"${dash}/>`,
  ].join('\n')
}

/** Labels beside their marks, moved down where two would lie over each other. */
function labels(marks: readonly Mark[], at: At): readonly string[] {
  const taken: { x: number; y: number }[] = []
  return marks.map(({ label, by, x, y, mirror }) => {
    const [px, py] = at(x, y)
    const end = px > WIDTH - 190
    const place = { x: end ? px - 16 : px + 16, y: py + 4 }
    while (taken.some((other) => Math.abs(other.y - place.y) < 15 && Math.abs(other.x - place.x) < 170))
      place.y += 15
    taken.push(place)
    const words = `${label} (${by}${mirror ? ', one of two' : ''})`
    return `<text x="${r(place.x)}" y="${r(place.y)}" text-anchor="${end ? 'end' : 'start'}" fill="${by === 'recorded' ? '#0b4f8a' : '#7a2e0e'}">${escaped(words)}</text>`
  })
}

function scaleBar(scale: number, height: number): string {
  const feet = [100, 50, 20, 10, 5, 2, 1].find((length) => length * scale <= WIDTH / 3) ?? 1
  const [x, y] = [MARGIN, height - 22]
  return `<path d="M${x} ${y - 5}V${y}H${r(x + feet * scale)}V${y - 5}" fill="none" stroke="#263238" stroke-width="2"/><text x="${r(x + feet * scale + 8)}" y="${y}">${feet} ft</text>`
}

/** Page up bears (A to B) − 90°; turned half round for a front wall. */
function north(bearingDeg: number | null, turn: number): string {
  if (bearingDeg === null)
    return `<text x="${WIDTH - 12}" y="20" text-anchor="end" fill="#455a64">north not known</text>`
  const angle = 90 - bearingDeg + (turn < 0 ? 180 : 0)
  return `<g transform="translate(${WIDTH - 34} 34) rotate(${r(angle)})"><path d="M0 20V-18M0 -18L-6 -8M0 -18L6 -8" fill="none" stroke="#263238" stroke-width="2"/><text y="-22" text-anchor="middle" font-weight="700">N</text></g>`
}

const key = (height: number): string =>
  `<text x="${WIDTH - 12}" y="${height - 22}" text-anchor="end" fill="#455a64">open and dashed: recorded · filled: found · ring: where it is, 95 %</text>`
