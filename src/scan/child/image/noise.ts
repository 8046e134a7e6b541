import type { Picture } from './picture.ts'

/** Points apart that are compared: nearer ones share their grain where a coarse scan was drawn finer. */
const APART = 4

/**
 * The grain of a picture as a standard deviation in steps of gray, from the median of the differences between points
 * a little apart (the median, so that the edges of letters don't count).
 */
export function grain({ data, width, height }: Picture): number {
  const counts = new Uint32Array(256)
  let total = 0
  for (let y = 1; y < height - 1; y += 5)
    for (let x = 1; x < width - APART; x += 3) {
      counts[Math.abs(data[y * width + x]! - data[y * width + x + APART]!)]!++
      total += 1
    }
  let below = 0
  for (let level = 0; level < 256; level++) {
    const own = counts[level]!
    // The median of |difference| of two draws from one bell curve is 0.954 of its deviation.
    if (below + own >= total / 2) return (level - 0.5 + (total / 2 - below) / (own || 1)) / 0.954
    below += own
  }
  return 0
}

/** Share of a written page that is full ink at the least. */
const FULL_INK = 0.004
const MOST_BLACK = 150

/** All lighter than `white` is paper and made white, the darkest of the page black: faded ink stands out again. */
export function stretched({ data, width, height }: Picture, white: number): Picture {
  const counts = new Uint32Array(256)
  for (let at = 0; at < data.length; at += 7) counts[data[at]!]!++
  let black = 0
  for (let below = 0; black < MOST_BLACK; black++) {
    below += counts[black]!
    if (below * 7 > FULL_INK * data.length) break
  }
  const span = Math.max(20, white - black)
  const table = Uint8Array.from({ length: 256 }, (_, level) =>
    Math.max(0, Math.min(255, ((level - black) * 255) / span)),
  )
  const out = new Uint8Array(data.length)
  for (let at = 0; at < data.length; at++) out[at] = table[data[at]!]!
  return { data: out, width, height }
}
