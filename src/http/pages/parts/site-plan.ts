import { type Html, html, markup } from '../html.ts'

/** The plan to scale and, under it, the same in words. The drawing escapes its own texts. */
export const sitePlanFigure = (svg: string | null, words: readonly string[]): Html =>
  html`
    <figure class="plan">
      ${
        svg &&
        html`
          <div class="drawing" tabindex="0" role="group" aria-label="Site plan drawing">
            ${markup(svg)}
          </div>
        `
      }
      <figcaption>
        <h3>The plan in words</h3>
        <ul>${words.map((line) => html`<li>${line}</li>`)}</ul>
      </figcaption>
    </figure>
  `
