import { photoPath } from '../../inspection/addresses.ts'
import { type Html, html } from '../html.ts'
import { day } from '../words/dates.ts'
import type { InspectionPhotos } from './photos.ts'

/** Small ones side by side, each opening the whole picture. */
export const photosByInspection = (county: string, inspections: readonly InspectionPhotos[]): Html =>
  inspections.length === 0
    ? html`<p>No photos.</p>`
    : html`
      ${inspections.map(
        ({ inspectedOn, firm, parts }) =>
          html`
            <section class="part">
              <h3>
                Inspection of ${day(inspectedOn)}
                ${firm && html` <span class="soft">${firm}</span>`}
              </h3>
              <dl class="taken">
                ${parts.map(
                  ({ about, photos }) =>
                    html`
                      <dt>${about}</dt>
                      <dd>
                        <ul>
                          ${photos.map(
                            ({ id, alt, at, width, height }) =>
                              html`
                                <li>
                                  <a href="${photoPath(county, id)}">
                                    <img
                                      src="${photoPath(county, id, true)}" alt="${alt}"
                                      width="${thumb(width, height)}" height="${HEIGHT}" loading="lazy"
                                    >
                                    ${at && html`<span class="soft">${at}</span>`}
                                  </a>
                                </li>
                              `,
                          )}
                        </ul>
                      </dd>
                    `,
                )}
              </dl>
            </section>
          `,
      )}
    `

/** Pixels of the page, so that nothing moves when the pictures come. */
const HEIGHT = 120
const thumb = (width: number, height: number): number =>
  Math.min(Math.max(Math.round((width / height) * HEIGHT), 60), 240)
