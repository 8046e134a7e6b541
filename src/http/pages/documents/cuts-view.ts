import type { Document } from '../../../store/documents.ts'
import { type Html, html } from '../html.ts'
import { documentPath, permitPath } from './addresses.ts'

export type CutsShown = {
  readonly document: Document
  readonly permit: number
  readonly done: ReadonlySet<number>
  readonly typed: string | null
  readonly fault: string | null
}

/** Which pages belong to which permit, and the form that changes that while none is confirmed. */
export function cutsView(county: string, { document, permit, done, typed, fault }: CutsShown): Html | null {
  const { id, permits, pages, revision } = document
  if ((pages ?? 1) < 2) return null
  const begins = permits.flatMap((of) => of[0] ?? [])
  const list = html`
    <ol class="cuts">
      ${permits.map((of, index) => {
        const says = `${spanOf(of)}${done.has(index) ? ', confirmed' : ''}`
        return index === permit || done.has(index)
          ? html`<li${index === permit && html` aria-current="step"`}>${says}</li>`
          : html`<li><a href="${permitPath(county, id, index)}">${says}</a></li>`
      })}
    </ol>
  `
  const form = html`
    <form method="post" action="${documentPath(county, id)}/cuts">
      <input type="hidden" name="version" value="${revision}">
      <label for="begins">Permits start on pages</label>
      ${fault !== null && html`<p class="fault" id="begins-fault">${fault}</p>`} <input
        id="begins" name="begins" value="${typed ?? begins.join(', ')}" size="14"
        maxlength="300"${fault !== null && html` aria-invalid="true" aria-describedby="begins-fault"`}
      > <button class="second">Split here and read again</button>
    </form>
  `
  return html`
    <details class="cutting"${fault !== null && html` open`}>
      <summary>
        ${
          permits.length > 1
            ? `Permit ${permit + 1} of ${permits.length} in this file`
            : `${pages} pages, one permit`
        }
      </summary>
      ${list}
      ${
        done.size === 0
          ? form
          : html`
            <p class="soft">The split cannot change now, because one of the permits is confirmed.</p>
          `
      }
    </details>
  `
}

function spanOf(pages: readonly number[]): string {
  const [from, to] = [pages[0], pages.at(-1)]
  if (from === undefined) return 'no page'
  return from === to ? `page ${from}` : `pages ${from} to ${to}`
}
