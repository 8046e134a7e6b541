import type { ComponentKind } from '../../../catalog/kinds.ts'
import type { Caution } from '../../../words/cautions.ts'
import { type Html, html } from '../../pages/html.ts'

/** All of them, before anybody starts; the brief has where each is from. */
export const cautionsWhole = (list: readonly Caution[]): Html =>
  html`
    <section class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">Before anything is opened</h2>
      <ul>${list.map(({ says }) => html`<li>${says}</li>`)}</ul>
    </section>
  `

/** Those about the thing that is about to be opened, above everything else on its step. */
export function cautionsBrief(list: readonly Caution[], kind: ComponentKind): Html {
  const about: readonly Caution['about'][] =
    kind === 'pump-chamber'
      ? ['power', 'entry', 'gas', 'covers']
      : HOLLOW.has(kind)
        ? ['entry', 'gas', 'collapse', 'covers']
        : SMALL.has(kind)
          ? ['entry', 'covers']
          : ['digging', 'holes']
  const [first, ...more] = about.flatMap((it) => list.filter((caution) => caution.about === it))
  if (!first) return html``
  return html`
    <div class="cautions" role="note" aria-label="Cautions">
      <p><b>${first.says}</b></p>
      ${
        more.length > 0 &&
        html`
          <details>
            <summary>${more.length} more before you open it</summary>
            <ul>${more.map(({ says }) => html`<li>${says}</li>`)}</ul>
          </details>
        `
      }
    </div>
  `
}

const HOLLOW: ReadonlySet<ComponentKind> = new Set(['tank', 'cesspool', 'seepage-pit'])
const SMALL: ReadonlySet<ComponentKind> = new Set([
  'inlet-baffle',
  'outlet-baffle',
  'effluent-filter',
  'access-opening',
  'riser',
  'distribution-box',
])
