import { statusSentence, VOICES } from '../../../words/agent/status.ts'
import { type Html, html } from '../html.ts'
import { briefPath, differenceAnchor } from '../layout/addresses.ts'
import { lettersPart } from '../letter/view.ts'
import { severityTag } from '../parts/severity.ts'
import { sitePlanFigure } from '../parts/site-plan.ts'
import { day } from '../words/dates.ts'
import type { Sources } from './comparison/proof-view.ts'
import { comparison } from './comparison/view.ts'
import { decideForm } from './decide-form-view.ts'
import type { Difference } from './difference.ts'
import { difference } from './difference-view.ts'
import type { ParcelFilePage } from './file.ts'
import { heading } from './heading-view.ts'
import { history } from './history-view.ts'
import { papers } from './papers-view.ts'
import { photosByInspection } from './photos-view.ts'
import { systemsOfFile } from './systems-view.ts'

export type FileOptions = {
  readonly county: string
  readonly pictures: Sources['picture']
  /** How a search led here, where it was not exact. */
  readonly came: string | null
  /** The difference whose form came back, or that was just decided. */
  readonly at: string | null
  /** Said at the top: what was just done, or why it was not. */
  readonly notice: { readonly says: string; readonly fault: boolean } | null
  /** What only one audience has: a firm's inspections. */
  readonly own: Html | null
}

const SECTIONS = [
  ['compared', 'Record and found'],
  ['plan', 'Site plan'],
  ['photos', 'Photos'],
  ['history', 'History'],
  ['papers', 'Permits and documents'],
  ['letters', 'Letters'],
] as const

/** The whole file of a parcel: what differs first, then line by line, the plan, the history, the papers. */
export function parcelFile(page: ParcelFilePage, options: FileOptions): Html {
  const { parcel, oldNumbers, status, plan } = page
  const { county, came, notice, own } = options
  return html`
    ${
      notice &&
      html`
        <p class="notice${notice.fault && ' bad'}" role="${notice.fault ? 'alert' : 'status'}">
          ${notice.says}
        </p>
      `
    }
    ${heading(parcel, oldNumbers, came)}
    <div class="abreast">
      <section class="status ${status.word}" aria-label="Status">
        <p class="word">${VOICES.en.word[status.word]}</p>
        <p>${statusSentence(status, 'en')}</p>
        <p class="soft">As of ${day(status.asOf)}.</p>
        <p><a href="${briefPath(county, page.address)}">Inspection brief</a></p>
      </section>
      ${summary(page)}
    </div>
    ${systemsOfFile(county, page)}
    <nav class="jump" aria-label="On this page">
      <ul>
        ${SECTIONS.map(([id, name]) => html`<li><a href="#${id}">${name}</a></li>`)}
      </ul>
    </nav>
    ${own}
    <section id="compared"><h2>Record and found</h2>${compared(page, options)}</section>
    <section id="plan">
      <h2>Site plan</h2>
      ${
        plan
          ? sitePlanFigure(plan.svg, plan.words)
          : html`
            <p>
              No site plan. It needs two ties and the distance between their corners, from the record or
              an inspection.
            </p>
          `
      }
    </section>
    <section id="photos"><h2>Photos</h2>${photosByInspection(county, page.photos)}</section>
    <section id="history"><h2>History</h2>${history(county, page.history)}</section>
    <section id="papers"><h2>Permits and documents</h2>${papers(page.permits, page.documents)}</section>
    <section id="letters"><h2>Letters</h2>${lettersPart(county, page.address, page.letters)}</section>
  `
}

const summary = ({ differences, recordAlone }: ParcelFilePage): Html =>
  html`
    <section class="differences" aria-label="Differences">
      <h2>Differences</h2>
      ${
        differences.length === 0
          ? html`
            <p>
              ${recordAlone ? 'Findings of other firms are shown only to them and to the county.' : 'None.'}
            </p>
          `
          : html`
            <ul>
              ${differences.map(
                ({ id, severity, title, about, standing }) => html`
                  <li>
                    ${severityTag(severity)} <a href="#${differenceAnchor(id)}">${title}, ${about}</a>
                    ${
                      standing !== 'open' &&
                      html` <span class="soft">
                        ${standing === 'decided' ? 'decided' : 'decided earlier; evidence changed'}
                      </span>
                      `
                    }
                  </li>
                `,
              )}
            </ul>
          `
      }
    </section>
  `

function compared(
  { comparison: lines, differences, forms, names, recordAlone }: ParcelFilePage,
  { county, pictures, at }: FileOptions,
): Html {
  if (!lines) return html`<p>Nothing to compare yet. There is no permit and no inspection on file.</p>`
  const byKey = new Map(differences.map((it) => [it.key, it]))
  const shown = new Set<string>()
  const under = (key: string): Html | null => {
    const it = byKey.get(key)
    if (!it || shown.has(key)) return null
    shown.add(key)
    return whole(it)
  }
  const whole = (it: Difference): Html => {
    const form = forms.get(it.id)
    return difference(it, form ? decideForm(county, form, at === it.id) : null)
  }
  const body = comparison(lines, { sources: { names, picture: pictures }, under })
  const left = differences.filter(({ key }) => !shown.has(key))
  return html`
    <p class="soft">
      ${
        lines.inspectedOn
          ? html`The file on the day of the inspection, ${day(lines.inspectedOn)}.`
          : recordAlone
            ? 'The record as it is now. You have not submitted an inspection here.'
            : 'The record as it is now. There is no inspection yet.'
      } Open a line to see its evidence.
    </p>
    ${body}${left.map(whole)}
  `
}
