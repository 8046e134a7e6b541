import type { InspectionBrief } from '../../../brief/inspection-brief.ts'
import type { Parcel } from '../../../store/parcels.ts'
import { bringWords } from '../../../words/bring.ts'
import { type Html, html } from '../html.ts'
import { parcelPath } from '../layout/addresses.ts'
import { sitePlanFigure } from '../parts/site-plan.ts'
import { day } from '../words/dates.ts'
import { capital } from '../words/plain.ts'
import { type BriefPart, presentBriefParts, presentFile } from './present.ts'

/** What to know before an inspection, in the order it is needed; made to be printed. */
export const briefView = (county: string, parcel: Parcel, brief: InspectionBrief): Html =>
  html`
    <h1>Inspection brief <span class="number">${parcel.number}</span> ${parcel.address}</h1>
    <p class="soft">
      From the county’s file on ${day(brief.asOf)}. <a
        class="screen" href="${parcelPath(county, parcel.number)}"
      >
        Parcel
      </a>
    </p>
    ${presentFile(brief).map((line) => html`<p>${line}</p>`)}
    ${cautions(brief)}
    <section>
      <h2>Where to look</h2>
      ${sitePlanFigure(brief.whereToLook.svg, brief.whereToLook.words)}${remarks(brief)}
    </section>
    <section><h2>What to measure</h2>${measurements(brief)}</section>
    <section>
      <h2>What to expect</h2>
      <p class="soft">
        Values are as the permits state them. What is only typical, and on no permit, is listed apart.
      </p>
      <div class="parts">${presentBriefParts(brief).map(part)}</div>
    </section>
    <section>
      <h2>What to bring</h2>
      <ul>
        ${brief.bring.map(bringWords).map(({ what, because }) => html`<li><b>${capital(what)}</b>: ${because}.</li>`)}
      </ul>
    </section>
  `

const cautions = ({ cautions: list }: InspectionBrief): Html =>
  html`
    <section class="cautions">
      <h2>Before you open anything</h2>
      <ul>
        ${list.map(({ says, source }) => html`<li>${says} <span class="soft">${source}</span></li>`)}
      </ul>
    </section>
  `

const remarks = ({ remarks: list }: InspectionBrief): Html | null =>
  list.length === 0
    ? null
    : html`
      <h3>Remarks on the permits</h3>
      <ul>
        ${list.map(
          ({ permit, about, says }) => html`
            <li>
              ${about !== null && html`<b>${capital(about)}:</b> `}
              ${says} <span class="soft">${permit}</span>
            </li>
          `,
        )}
      </ul>
    `

const measurements = ({ measurements: list }: InspectionBrief): Html =>
  list.length === 0
    ? html`
      <p>No single measurement would settle a question. Measure and tie in everything you find.</p>
    `
    : html`
      <p class="soft">Most useful first. Without each one, the questions listed with it stay open.</p>
      <ol class="measure">
        ${list.map(
          ({ what, how, settles }) =>
            html`
              <li><b>${capital(what)}</b>: ${how}. <span class="soft">${settles.join(' ')}</span></li>
            `,
        )}
      </ol>
    `

const part = ({ title, lines, usual }: BriefPart): Html =>
  html`
    <section class="part">
      <h3>${title}</h3>
      ${
        lines.length > 0 &&
        html`
          <dl>
            ${lines.map(
              ({ what, says, sure, from }) => html`
                <div>
                  <dt>${what}</dt>
                  <dd class="rec">
                    ${says}
                    ${sure && html` <b>${sure}</b>`} <span class="soft">${from}</span>
                  </dd>
                </div>
              `,
            )}
          </dl>
        `
      }
      ${
        usual.length > 0 &&
        html`
          <p class="usual"><b>Typical, not on record</b></p>
          <ul class="usual">${usual.map((says) => html`<li>${says}</li>`)}</ul>
        `
      }
    </section>
  `
