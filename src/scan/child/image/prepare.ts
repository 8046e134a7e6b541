import sharp from 'sharp'
import { onWhite } from './background.ts'
import { grain, stretched } from './noise.ts'
import type { Picture } from './picture.ts'
import { skewDegrees } from './skew.ts'

/**
 * A page made ready for reading, and how it was turned: boxes on it are led back to the page as shown. `scanned` is the same
 * page level, a little softened and otherwise as it came: what the clean-up takes for paper may have been a faint stroke.
 */
export type Prepared = {
  readonly picture: Picture
  readonly scanned: Picture
  readonly degrees: number
  readonly grain: number
}

/** Grain from which a picture is smoothed, and how much for how much; from trial on graded damage. */
const LEAST_GRAIN = 7
const BLUR_PER_GRAIN = 1 / 14
const MOST_BLUR = 2.2
/** What the page as scanned is softened by for the reader of our own: squares of coarse scans and grain hide strokes. From trial. */
const SOFT = 1.5
/** Gray that the paper has after division, and how many deviations below it still are paper. */
const PAPER = 245
const DEVIATIONS = 2.6
const LEAST_WHITE = 165

/** Background divided out, grain smoothed, lines brought level. */
export async function prepared(page: Picture): Promise<Prepared> {
  const rough = grain(page)
  let picture = page
  if (rough > LEAST_GRAIN)
    picture = await smoothed(picture, Math.min(MOST_BLUR, Math.max(0.4, rough * BLUR_PER_GRAIN)))
  picture = onWhite(picture)
  picture = stretched(picture, Math.max(LEAST_WHITE, PAPER - DEVIATIONS * grain(picture)))
  const degrees = skewDegrees(picture)
  const soft = await smoothed(page, SOFT)
  if (degrees === 0) return { picture, scanned: soft, degrees, grain: rough }
  const [level, scanned] = await Promise.all([turned(picture, -degrees), turned(soft, -degrees)])
  return { picture: level, scanned, degrees, grain: rough }
}

const raw = ({ data, width, height }: Picture) => sharp(data, { raw: { width, height, channels: 1 } })

async function smoothed(picture: Picture, sigma: number): Promise<Picture> {
  const data = await raw(picture).blur(sigma).grayscale().raw().toBuffer()
  return { ...picture, data: new Uint8Array(data.buffer, data.byteOffset, data.length) }
}

/** Turned about its middle and cut to the same size; positive is clockwise. */
export async function turned(picture: Picture, degrees: number): Promise<Picture> {
  const { data, info } = await raw(picture)
    .rotate(degrees, { background: '#ffffff' })
    .grayscale()
    .raw()
    .toBuffer({ resolveWithObject: true })
  const [left, top] = [
    Math.floor((info.width - picture.width) / 2),
    Math.floor((info.height - picture.height) / 2),
  ]
  const out = new Uint8Array(picture.width * picture.height).fill(255)
  for (let y = 0; y < picture.height; y++) {
    const from = (y + top) * info.width + left
    out.set(data.subarray(from, from + picture.width), y * picture.width)
  }
  return { data: out, width: picture.width, height: picture.height }
}

/** A quarter, half or three quarters of a turn clockwise. */
export async function quarterTurned(picture: Picture, degrees: 90 | 180 | 270): Promise<Picture> {
  const { data, info } = await raw(picture)
    .rotate(degrees)
    .grayscale()
    .raw()
    .toBuffer({ resolveWithObject: true })
  return {
    data: new Uint8Array(data.buffer, data.byteOffset, data.length),
    width: info.width,
    height: info.height,
  }
}
