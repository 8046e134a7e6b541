import type { Box } from '../../../records/source.ts'
import { type Html, html } from '../html.ts'

/** A page's picture and its height against its width. */
export type Picture = { readonly path: string; readonly shape: number }

/**
 * The part of a scanned page that a value was read from, with a frame around the words. The picture is cut by the view
 * box, so that no style is needed; it shows the box with room around it, or the whole page where there is no box.
 */
export function scanCut({ path, shape }: Picture, box: Box | null, words: string): Html {
  const around = box ?? { x: 0, y: 0, w: 1, h: 1 }
  const [left, top] = [Math.max(0, around.x - 0.08), Math.max(0, around.y - 0.03)]
  const [width, height] = [Math.min(1 - left, around.w + 0.16), Math.min(1 - top, around.h + 0.06)]
  const [w, h] = [1000, 1000 * shape]
  const frame =
    box &&
    html`<rect x="${box.x * w - 4}" y="${box.y * h - 4}" width="${box.w * w + 8}" height="${box.h * h + 8}" fill="none" stroke="#7a2e0e" stroke-width="4"/>`
  return html`<svg class="scan" viewBox="${left * w} ${top * h} ${width * w} ${height * h}" role="img" aria-label="The scan where it says ${words}"><image href="${path}" width="${w}" height="${h}" preserveAspectRatio="none"/>${frame}</svg>`
}
