import type { Picture } from './picture.ts'

/** Side of the squares whose paper is judged as one, in points: wider than a letter, narrower than a shadow. */
const SQUARE = 32
/** White of the paper after division; ink keeps its contrast against it. */
const WHITE = 245

/**
 * The paper divided out: shade, stain and yellowing go, ink stays. The paper of a square is its 80th percentile, for
 * most of any square is paper.
 */
export function onWhite({ data, width, height }: Picture): Picture {
  const columns = Math.ceil(width / SQUARE)
  const rows = Math.ceil(height / SQUARE)
  const paper = smoothed(paperOf({ data, width, height }, columns, rows), columns, rows)
  const out = new Uint8Array(data.length)
  for (let y = 0; y < height; y++) {
    const gy = Math.max(0, Math.min(rows - 1, y / SQUARE - 0.5))
    const [y0, fy] = [Math.floor(gy), gy - Math.floor(gy)]
    const y1 = Math.min(rows - 1, y0 + 1)
    for (let column = 0; column < columns; column++) {
      const next = Math.min(columns - 1, column + 1)
      const left = paper[y0 * columns + column]! * (1 - fy) + paper[y1 * columns + column]! * fy
      const right = paper[y0 * columns + next]! * (1 - fy) + paper[y1 * columns + next]! * fy
      const from = Math.min(width, Math.max(0, Math.round((column + 0.5) * SQUARE)))
      const start = column === 0 ? 0 : from
      const end = column === columns - 1 ? width : Math.min(width, from + SQUARE)
      for (let x = start; x < end; x++) {
        const f = Math.max(0, Math.min(1, (x - from) / SQUARE))
        const value = (data[y * width + x]! * WHITE) / (left + (right - left) * f)
        out[y * width + x] = Math.min(value, 255)
      }
    }
  }
  return { data: out, width, height }
}

function paperOf({ data, width, height }: Picture, columns: number, rows: number): Float32Array {
  const paper = new Float32Array(columns * rows)
  const counts = new Uint32Array(256)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      counts.fill(0)
      let total = 0
      const [y1, x1] = [Math.min(height, (row + 1) * SQUARE), Math.min(width, (column + 1) * SQUARE)]
      for (let y = row * SQUARE; y < y1; y += 2)
        for (let x = column * SQUARE; x < x1; x += 2) {
          counts[data[y * width + x]!]!++
          total += 1
        }
      let level = 255
      for (let above = 0; level > 0; level--) {
        above += counts[level]!
        if (above > total * 0.2) break
      }
      paper[row * columns + column] = Math.max(24, level)
    }
  }
  return paper
}

/** A square full of ink is told by its neighbors: the mean of each three by three, its darkest left out. */
function smoothed(paper: Float32Array, columns: number, rows: number): Float32Array {
  const out = new Float32Array(paper.length)
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const near: number[] = []
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++)
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++)
          near.push(paper[y * columns + x]!)
      near.sort((a, b) => a - b)
      const kept = near.slice(Math.floor(near.length / 3))
      out[row * columns + column] = kept.reduce((sum, value) => sum + value, 0) / kept.length
    }
  return out
}
