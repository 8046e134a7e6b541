import type { TrialResult } from '../../../operations/rule-trials/try-rules.ts'
import type { Job } from '../../../store/jobs.ts'
import { type Html, html } from '../html.ts'
import { parcelPath, rulesPath } from '../layout/addresses.ts'
import { counted, headed, plain } from '../words/plain.ts'

/** Listed on the page; the whole list is in the API's answer. */
const SHOWN = 200

/** The pack to be tried, with every fault by its line. */
export const formView = (county: string, yaml: string, faults: readonly string[]): Html =>
  html`<p><a href="${rulesPath(county)}">All packs</a></p><h1>Try other rules</h1><p class="lead">Every parcel with something on file is reconciled twice, under the rules in force and under these. Nothing is stored but what it came to, and nothing changes for anybody.</p>${
    faults.length > 0 &&
    html`<div role="alert" class="faults"><p><b>${counted(faults.length, 'thing')} to mend:</b></p><ul>${faults.map((it) => html`<li>${it}</li>`)}</ul></div>`
  }<form method="post" action="${rulesPath(county)}/trial"><p><label for="yaml">The pack as it would be. One with the name of a pack in use takes its place.</label></p><p><textarea id="yaml" name="yaml" rows="28" cols="100" spellcheck="false" required>${yaml}</textarea></p><p><button>Try it</button></p></form>`

export const underWayView = (county: string, { state, done, total, says }: Job): Html =>
  html`<p><a href="${rulesPath(county)}">All packs</a></p><h1>Trial of other rules</h1>${
    state === 'failed'
      ? html`<p class="lead" role="alert">It broke off. ${says ?? ''}</p>`
      : html`<p class="lead" role="status">${done.toLocaleString('en-US')} of ${total === null ? 'all' : total.toLocaleString('en-US')} parcels looked at${says !== null && html`; ${says}`}. This page looks again by itself.</p>`
  }`

export const resultView = (county: string, result: TrialResult): Html =>
  html`<p><a href="${rulesPath(county)}">All packs</a></p><h1>What ${result.pack} would change</h1><p class="lead">${
    result.changed === 0
      ? html`Nothing: of ${counted(result.looked, 'parcel')} with something on file none would have another answer.`
      : html`<b>${result.changed.toLocaleString('en-US')}</b> of ${counted(result.looked, 'parcel')} with something on file would have another answer, as of ${result.asOf}.`
  }</p><p class="soft">${
    result.parameters.length === 0
      ? 'For this county it says nothing other than the rules in force.'
      : html`It says otherwise: ${result.parameters.map((name) => plain(name.replaceAll('.', ' '))).join('; ')}.`
  }</p>${result.changed > 0 && tables(county, result)}`

const tables = (county: string, { byKind, byDecade, byBedrooms, parcels }: TrialResult): Html =>
  html`${table(
    'By kind of difference',
    ['Kind', 'Would appear', 'Would vanish', 'Would say something else'],
    byKind.map((it) => [headed(it.kind), it.appears, it.vanishes, it.changes]),
  )}${table(
    'By decade of the first approved permit',
    ['Decade', 'Looked at', 'Would change'],
    byDecade.map(({ decade, looked, changed }) => [
      decade === null ? 'No approved permit' : `${decade}s`,
      looked,
      changed,
    ]),
  )}${table(
    'By bedrooms on record',
    ['Bedrooms', 'Looked at', 'Would change'],
    byBedrooms.map(({ bedrooms, looked, changed }) => [
      bedrooms === null ? 'Not stated' : String(bedrooms),
      looked,
      changed,
    ]),
  )}<h2>The parcels</h2>${parcels.length > SHOWN && html`<p class="soft">The first ${SHOWN} of ${parcels.length.toLocaleString('en-US')}, by number.</p>`}<ul>${parcels
    .slice(0, SHOWN)
    .map(
      ({ number, changes }) =>
        html`<li><a href="${parcelPath(county, number)}">${number}</a><ul>${changes.map(
          ({ change, kind, about, inForce, proposed }) =>
            html`<li><b>${headed(kind)}, ${about}</b> ${WORDS[change]}. ${inForce !== null && html`Now: ${inForce} `}${proposed !== null && html`Then: ${proposed}`}</li>`,
        )}</ul></li>`,
    )}</ul>`

const WORDS = {
  appears: 'would appear',
  vanishes: 'would vanish',
  changes: 'would say something else',
} as const

const table = (
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): Html =>
  html`<div class="scroll" tabindex="0" role="region" aria-label="${caption}, table"><table><caption>${caption}</caption><thead><tr>${heads.map(
    (head, index) => html`<th scope="col"${index > 0 && html` class="figure"`}>${head}</th>`,
  )}</tr></thead><tbody>${rows.map(
    ([name, ...counts]) =>
      html`<tr><th scope="row">${name}</th>${counts.map((count) => html`<td class="figure">${count.toLocaleString('en-US')}</td>`)}</tr>`,
  )}</tbody></table></div>`
