import type { DocumentRead } from '../../../operations/documents/read-document.ts'
import type { Box } from '../../../records/source.ts'
import { type Html, html } from '../html.ts'
import { pagePicturePath } from '../layout/addresses.ts'
import { type Picture, scanCut } from '../parts/scan.ts'
import type { Place } from './present.ts'

export type Pictures = { readonly of: (page: number) => Picture }

/** A letter sheet, for pages whose size could not be read. */
const USUAL_SHAPE = 11 / 8.5

export const picturesOf = (county: string, { document, pages }: DocumentRead): Pictures => {
  const shapes = new Map(pages.map(({ number, widthPt, heightPt }) => [number, heightPt / widthPt]))
  return {
    of: (page) => ({
      path: pagePicturePath(county, document.id, page),
      shape: shapes.get(page) ?? USUAL_SHAPE,
    }),
  }
}

/**
 * The pages of a permit with the place of each value marked, and above them the place of the first value to look at,
 * enlarged. Without scripts the pages stand as they are; the module moves both with the focus.
 */
export function scanView(
  pages: readonly number[],
  places: readonly Place[],
  at: Place | null,
  pictures: Pictures,
): Html {
  const zoomed = at ?? null
  const shownFirst = zoomed?.page ?? pages[0] ?? 1
  return html`
    <div class="paper">
      <div class="zoom">
        ${scanCut(pictures.of(shownFirst), zoomed?.box ?? null, zoomed?.words ?? 'the whole page')}
      </div>
      ${pages.map(
        (page) =>
          html`
            <figure class="sheet${page === shownFirst && ' now'}" data-page="${page}">
              ${pageView(page, places, page === shownFirst ? zoomed : null, pictures.of(page))}
              <figcaption>Page ${page}</figcaption>
            </figure>
          `,
      )}
    </div>
  `
}

/** Not drawn (SVG 2, 10.2: a width of zero disables rendering), and there for the module to move. */
const NOWHERE = html`<rect class="at" width="0" height="0"/>`

function pageView(page: number, places: readonly Place[], at: Place | null, { path, shape }: Picture): Html {
  const [w, h] = [1000, 1000 * shape]
  const rect = (name: string, { x, y, w: width, h: height }: Box) =>
    html`
      <rect
        class="${name}" x="${(x * w - 4).toFixed(1)}" y="${(y * h - 4).toFixed(1)}"
        width="${(width * w + 8).toFixed(1)}" height="${(height * h + 8).toFixed(1)}"
      />
    `
  return html`
    <svg viewBox="0 0 ${w} ${h.toFixed(1)}" role="img" aria-label="Page ${page} of the scan">
      <image href="${path}" width="${w}" height="${h.toFixed(1)}" preserveAspectRatio="none"/>
      ${places
        .filter((place) => place.page === page)
        .map(({ box }) => rect('spot', box))}${at ? rect('at', at.box) : NOWHERE}
    </svg>
  `
}
