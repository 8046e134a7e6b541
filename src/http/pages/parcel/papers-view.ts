import { type Html, html } from '../html.ts'
import type { PaperLine } from './papers.ts'

export const papers = (permits: readonly PaperLine[], documents: readonly PaperLine[]): Html =>
  html`
    ${list('Permits', permits, 'No permit is on file.')}
    ${documents.length > 0 && list('Documents', documents, '')}
  `

const list = (title: string, lines: readonly PaperLine[], none: string): Html =>
  html`
    <section class="part">
      <h3>${title}</h3>
      ${
        lines.length === 0
          ? html`<p>${none}</p>`
          : html`
            <ul class="papers">
              ${lines.map(
                ({ name, says, remarks, path }) => html`
                  <li>
                    <b>${path ? html`<a href="${path}">${name}</a>` : name}</b>: ${says}.
                    ${remarks && html`<br><span class="soft">${remarks}</span>`}
                  </li>
                `,
              )}
            </ul>
          `
      }
    </section>
  `
