import { type Html, html } from '../html.ts'
import { parcelPath, systemsPath } from '../layout/addresses.ts'
import type { ParcelFilePage } from './file.ts'

/** Each system and how it stands, where there is more to it than the parcel's own; and where a reviewer says otherwise. */
export function systemsOfFile(
  county: string,
  { parcel, systems, reviews }: Pick<ParcelFilePage, 'parcel' | 'systems' | 'reviews'>,
): Html | false {
  const plain = systems.length === 1 && systems[0]!.reach === null
  if (plain && !reviews) return false
  return html`
    <section id="systems" aria-label="Septic systems">
      ${!plain && html`<h2>Septic systems</h2>${list(county, systems)}`}
      ${
        reviews &&
        html`
          <p class="soft">
            <a href="${systemsPath(county, parcel.number)}">
              ${plain ? 'Another system, or a shared one?' : 'Change what each system serves'}
            </a>
          </p>
        `
      }
    </section>
  `
}

const TITLE = 'It is shared. An easement or agreement is a matter for title work.'

const told = ({ standing, unseen, shown }: ParcelFilePage['systems'][number]): string =>
  [
    ...(standing ? [`${standing}.`] : []),
    ...(unseen ? ['It was not inspected.'] : []),
    ...(shown && standing ? ['Its file is shown below.'] : []),
  ].join(' ')

const list = (county: string, systems: ParcelFilePage['systems']): Html => html`
  <ul class="hits">
    ${systems.map(
      (it) => html`
        <li>
          <p>
            <b>${it.shown ? it.name : html`<a href="${parcelPath(county, it.address)}">${it.name}</a>`}</b>
            ${' '}${told(it)}
          </p>
          ${it.reach && html`<p class="soft">${it.reach} ${it.shared && TITLE}</p>`}
        </li>
      `,
    )}
  </ul>
`
