import type { Pack } from '../../../rules/pack.ts'
import { type Html, html } from '../html.ts'
import { packPath, rulesPath } from '../layout/addresses.ts'
import { citation, citations } from '../parts/citation.ts'
import { capital } from '../words/plain.ts'
import { VERIFIED_WORDS } from '../words/sources.ts'
import { type EntryShown, type PackLine, type ParameterShown, spanInWords } from './present.ts'
import { ruleValue } from './value-view.ts'

export const layersView = (county: string, name: string, packs: readonly PackLine[]): Html =>
  html`
    <h1>Rules of ${name}</h1>
    <p class="lead">
      The most local pack comes first and overrides those after it. Each value says where it is printed
      and who verified it. <a href="${rulesPath(county)}/trial">Test rule changes</a> on the whole
      county before you adopt them.
    </p>
    <ol class="packs">
      ${packs.map(
        ({ pack, title, whose, invented, during, cited }) =>
          html`
            <li>
              <a href="${packPath(county, pack)}">${title}</a> <span class="soft">${whose}</span>
              ${invented && html` <b>Invented for the demonstration.</b>`}
              <br>Used here: ${during.join('; ')}.
              ${
                cited.length > 0 &&
                html`
                  <br>
                  <span class="soft">
                    Citations: ${cited.map(({ verified, count }) => `${count} ${VERIFIED_WORDS[verified]}`).join('; ')}.
                  </span>
                `
              }
            </li>
          `,
      )}
    </ol>
  `

export const packView = (
  county: string,
  { title, jurisdiction, invented, adoption }: Pack,
  parameters: readonly ParameterShown[],
): Html =>
  html`
    <p><a href="${rulesPath(county)}">All packs</a></p>
    <h1>${title}</h1>
    <p class="lead">
      ${jurisdiction.name}.
      ${invented && html` <b>Everything in this pack is invented for the demonstration.</b>`}
    </p>
    ${
      adoption.length > 0 &&
      html`
        <section class="part">
          <h2>Adoption dates</h2>
          <ul>
            ${adoption.map((it) => html`<li>${capital(spanInWords(it))}: ${it.note}</li>`)}
          </ul>
        </section>
      `
    }
    ${parameters.map(parameter)}
  `

const parameter = ({ name, meaning, governedBy, entries }: ParameterShown): Html =>
  html`
    <section class="part">
      <h2>${capital(name)}</h2>
      <p>${capital(meaning)}. <span class="soft">${capital(governedBy)}.</span></p>
      ${entries.map(entry)}
    </section>
  `

const entry = ({ during, value, note, citations: cited, verified, contradictions }: EntryShown): Html =>
  html`
    <section class="entry">
      <h3>${capital(during)} <span class="cited ${verified}">${VERIFIED_WORDS[verified]}</span></h3>
      <div class="scroll" tabindex="0" role="group" aria-label="Value, ${during}">
        ${ruleValue(value)}
      </div>
      ${note && html`<p>${note}</p>`}
      ${citations(cited)}
      ${contradictions.map(
        (it) => html`<p><b>Contradicted:</b> ${it.says} ${it.citations.map(citation)}</p>`,
      )}
    </section>
  `
