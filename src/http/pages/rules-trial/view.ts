import type { TrialResult } from '../../../operations/rule-trials/try-rules.ts'
import type { Job } from '../../../store/jobs.ts'
import { type Html, html } from '../html.ts'
import { parcelPath, rulesPath } from '../layout/addresses.ts'
import { dayInWords } from '../words/dates.ts'
import { counted, headed, plain } from '../words/plain.ts'

/** Listed on the page; the whole list is in the API's answer. */
const SHOWN = 200

/** The pack to test, with every fault by its line. */
export const formView = (county: string, yaml: string, faults: readonly string[]): Html =>
  html`
    <p><a href="${rulesPath(county)}">All packs</a></p>
    <h1>Test rule changes</h1>
    <p class="lead">
      Every parcel on file is compared twice: under the rules in force and under these. Nothing changes
      for anyone. Only the result of the test is kept.
    </p>
    ${
      faults.length > 0 &&
      html`
        <div role="alert" class="faults">
          <p><b>${counted(faults.length, 'thing')} to fix:</b></p>
          <ul>${faults.map((it) => html`<li>${it}</li>`)}</ul>
        </div>
      `
    }
    <form method="post" action="${rulesPath(county)}/trial">
      <p>
        <label for="yaml">
          The pack as it would be. If it has the name of a pack in use, it replaces that pack in the
          test.
        </label>
      </p>
      <p>
        <textarea id="yaml" name="yaml" rows="28" cols="100" spellcheck="false" required>
          ${yaml}
        </textarea>
      </p>
      <p><button>Test</button></p>
    </form>
  `

export const underWayView = (county: string, { state, done, total, says }: Job): Html =>
  html`
    <p><a href="${rulesPath(county)}">All packs</a></p>
    <h1>Test of rule changes</h1>
    ${
      state === 'failed'
        ? html`<p class="lead" role="alert">The test stopped. ${says ?? ''}</p>`
        : html`
          <p class="lead" role="status">
            ${done.toLocaleString('en-US')} of ${total === null ? 'all' : total.toLocaleString('en-US')} parcels
            checked
            ${says !== null && html`; ${says}`}. This page refreshes by itself.
          </p>
        `
    }
  `

export const resultView = (county: string, result: TrialResult): Html =>
  html`
    <p><a href="${rulesPath(county)}">All packs</a></p>
    <h1>What ${result.pack} would change</h1>
    <p class="lead">
      ${
        result.changed === 0
          ? html`
            Nothing. None of ${counted(result.looked, 'parcel')} on file would have a different result.
          `
          : html`
            <b>${result.changed.toLocaleString('en-US')}</b> of ${counted(result.looked, 'parcel')} on
            file would have a different result, as of ${dayInWords(result.asOf)}.
          `
      }
    </p>
    <p class="soft">
      ${
        result.parameters.length === 0
          ? 'For this county it is the same as the rules in force.'
          : html`
            It changes: ${result.parameters.map((name) => plain(name.replaceAll('.', ' '))).join('; ')}.
          `
      }
    </p>
    ${result.changed > 0 && tables(county, result)}
  `

const tables = (county: string, { byKind, byDecade, byBedrooms, parcels }: TrialResult): Html =>
  html`
    ${table(
      'By kind of difference',
      ['Kind', 'Would appear', 'Would go away', 'Would change'],
      byKind.map((it) => [headed(it.kind), it.appears, it.vanishes, it.changes]),
    )}
    ${table(
      'By decade of the first approved permit',
      ['Decade', 'Checked', 'Would change'],
      byDecade.map(({ decade, looked, changed }) => [
        decade === null ? 'No approved permit' : `${decade}s`,
        looked,
        changed,
      ]),
    )}
    ${table(
      'By bedrooms on record',
      ['Bedrooms', 'Checked', 'Would change'],
      byBedrooms.map(({ bedrooms, looked, changed }) => [
        bedrooms === null ? 'Not stated' : String(bedrooms),
        looked,
        changed,
      ]),
    )}
    <h2>The parcels</h2>
    ${
      parcels.length > SHOWN &&
      html`
        <p class="soft">The first ${SHOWN} of ${parcels.length.toLocaleString('en-US')}, by number.</p>
      `
    }
    <ul>
      ${parcels.slice(0, SHOWN).map(
        ({ number, changes }) =>
          html`
            <li>
              <a href="${parcelPath(county, number)}">${number}</a>
              <ul>
                ${changes.map(
                  ({ change, kind, about, inForce, proposed }) =>
                    html`
                      <li>
                        <b>${headed(kind)}, ${about}</b> ${WORDS[change]}. ${
                          inForce !== null && html`Now: ${inForce} `
                        }
                        ${proposed !== null && html`Then: ${proposed}`}
                      </li>
                    `,
                )}
              </ul>
            </li>
          `,
      )}
    </ul>
  `

const WORDS = {
  appears: 'would appear',
  vanishes: 'would go away',
  changes: 'would change',
} as const

const table = (
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): Html =>
  html`
    <div class="scroll" tabindex="0" role="region" aria-label="${caption}, table">
      <table>
        <caption>${caption}</caption>
        <thead>
          <tr>
            ${heads.map(
              (head, index) => html`<th scope="col"${index > 0 && html` class="figure"`}>${head}</th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([name, ...counts]) =>
              html`
                <tr>
                  <th scope="row">${name}</th>
                  ${counts.map((count) => html`<td class="figure">${count.toLocaleString('en-US')}</td>`)}
                </tr>
              `,
          )}
        </tbody>
      </table>
    </div>
  `
