import type { Box } from '../../../records/source.ts'
import { type Html, html } from '../html.ts'

/** A page's picture and its height against its width. */
export type Picture = { readonly path: string; readonly shape: number }

/**
 * The part of a scanned page that a value was read from, with a frame around the words. The picture is cut by the view
 * box, so that no style is needed; it shows the box with room around it, or the whole page where there is no box.
 */
export function scanCut({ path, shape }: Picture, box: Box | null, words: string): Html {
  const shown = box ? around(box) : WHOLE
  const [w, h] = [1000, 1000 * shape]
  const frame =
    box &&
    html`
      <rect
        x="${box.x * w - 4}" y="${box.y * h - 4}" width="${box.w * w + 8}" height="${box.h * h + 8}"
        fill="none" stroke="#7a2e0e" stroke-width="4"
      />
    `
  const view = [shown.x * w, shown.y * h, shown.w * w, shown.h * h].map((part) => part.toFixed(1)).join(' ')
  return html`
    <svg class="scan" viewBox="${view}" role="img" aria-label="The scan: ${words}">
      <image href="${path}" width="${w}" height="${h.toFixed(1)}" preserveAspectRatio="none"/>
      ${frame}
    </svg>
  `
}

const WHOLE: Box = { x: 0, y: 0, w: 1, h: 1 }

/** Half a page wide and a few lines high: enough to see which line and column the words stand in. */
function around({ x, y, w, h }: Box): Box {
  const [width, height] = [Math.min(1, Math.max(0.5, w + 0.1)), Math.min(1, h + 0.08)]
  const within = (middle: number, size: number) => Math.min(Math.max(middle - size / 2, 0), 1 - size)
  return { x: within(x + w / 2, width), y: within(y + h / 2, height), w: width, h: height }
}
