import { flag, type Html, html } from '../../pages/html.ts'
import { inspectionPath, numberShown } from '../addresses.ts'
import type { Clash } from '../sending/clashes.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'

export type ConflictShown = {
  readonly sheet: InspectionSheet
  readonly clashes: readonly Clash[]
  /** What the other copy is: `saved at 10:42 from another phone`. */
  readonly other: string
  /** Goes with the answer: what was typed, and the version it is weighed against. */
  readonly carried: Readonly<Record<string, string>>
  /** The other copy was submitted and can only be amended. */
  readonly handedIn: boolean
}

/** Two copies of an inspection side by side. Nothing is written over until every line has been decided. */
export const conflictView = ({ sheet, clashes, other, carried, handedIn }: ConflictShown): Html =>
  html`
    <h1 id="title" tabindex="-1">
      <span class="number">${numberShown(sheet.parcel)} ${sheet.parcel.address}</span>
      Two copies of this inspection
    </h1>
    <p class="lead">
      ${
        handedIn
          ? 'This inspection was submitted from another device, and yours is different. Nothing was overwritten. ' +
            'What you choose goes into an amendment.'
          : 'This inspection was also changed on another device. Nothing was overwritten. Choose line by line which one to keep.'
      }
    </p>
    <form
      class="step clashes"
      method="post"
      action="${inspectionPath(sheet.county, sheet.parcel.number)}"
      id="clashes"
    >
      ${Object.entries(carried).map(
        ([name, value]) => html`<input type="hidden" name="${name}" value="${value}">`,
      )}
      ${clashes.map(clashView)}
      <p class="soft">The other copy: ${other}.</p>
      <div class="bar">
        <button class="quiet" name="to" value="keep-theirs" formnovalidate>
          Use the other copy for all
        </button>
        <button name="to" value="settle">Save these choices</button>
      </div>
    </form>
  `

const clashView = ({ id, where, question, mine, theirs, changed }: Clash): Html => {
  const radio = (side: 'mine' | 'theirs', title: string, says: string | null): Html =>
    html`
      <label class="side">
        <input
          type="radio"
          name="keep:${id}"
          value="${side}"
          required
          ${flag('checked', changed === side)}
        >
        <span>
          <b>${title}</b>
          <br>
          ${says ?? 'nothing'}
          ${changed === side && html`<br><span class="soft">only this one was changed</span>`}
        </span>
      </label>
    `
  return html`
    <fieldset class="clash">
      <legend>${where}: ${question}</legend>
      <div class="two">${radio('mine', 'Yours', mine)}${radio('theirs', 'The other', theirs)}</div>
    </fieldset>
  `
}
