import { type Html, html } from '../../pages/html.ts'
import { inspectionPhotosPath } from '../addresses.ts'
import type { InspectionShown, PhotoShown } from './shown.ts'

/**
 * Photos of one component, taken where one stands. Its fields stand among the others and belong to a form of their own
 * (`photoForm`), since that one sends files.
 */
export function photosView({ photos }: InspectionShown, component: string | null): Html {
  const own = photos.filter((photo) => photo.component === component)
  return html`
    <section class="photos" aria-labelledby="photos-title">
      <h2 id="photos-title">Photos</h2>
      <input type="hidden" name="component" value="${component ?? ''}" form="${FORM}">
      <label class="tick">
        <input type="checkbox" name="keepPlace" value="true" form="${FORM}">
        <span>Keep where it was taken <span class="soft">the time is always kept</span></span>
      </label>
      <label class="button take" for="photo">Take a photo</label>
      <input
        class="file"
        id="photo"
        type="file"
        name="photo"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        form="${FORM}"
      >
      <button class="quiet unscripted" form="${FORM}">Keep this photo</button>
      <p class="fault" id="photo-fault" role="alert" hidden></p>
      <ul class="shots" id="shots">${own.map(shot)}</ul>
    </section>
  `
}

const FORM = 'photo-form'

export const photoForm = ({ sheet, step }: InspectionShown): Html =>
  html`
    <form
      method="post"
      action="${inspectionPhotosPath(sheet.county, sheet.parcel.number)}"
      enctype="multipart/form-data"
      id="${FORM}"
    >
      <input type="hidden" name="step" value="${step}">
    </form>
  `

export const shot = ({ id, src, taken, says }: PhotoShown): Html =>
  html`
    <li data-photo="${id}">
      ${
        src
          ? html`
          <a href="${src.replace('?size=small', '')}">
            <img src="${src}" alt="Photo taken ${taken}" width="120" height="90" loading="lazy">
          </a>
        `
          : html`<span class="unsent" role="img" aria-label="Photo taken ${taken}"></span>`
      }
      <span>${taken}<br><span class="soft">${says}</span></span>
      <button type="button" class="quiet drop scripted">Remove</button>
    </li>
  `
