import type { Picture } from './picture.ts'

/**
 * The grain of a picture as a standard deviation in steps of grey, from the median of the differences between
 * neighbours (Immerkær's idea, with the median so that the edges of letters don't count).
 */
export function grain({ data, width, height }: Picture): number {
  const counts = new Uint32Array(256)
  let total = 0
  for (let y = 1; y < height - 1; y += 5)
    for (let x = 1; x < width - 1; x += 3) {
      counts[Math.abs(data[y * width + x]! - data[y * width + x + 1]!)]!++
      total += 1
    }
  let below = 0
  for (let level = 0; level < 256; level++) {
    below += counts[level]!
    // The median of |difference| of two even draws is 0.954 of their deviation.
    if (below >= total / 2) return level / 0.954
  }
  return 0
}
