import type { FieldOf } from '../../../catalog/field.ts'
import { flag, type Html, html } from '../../pages/html.ts'
import { type FormField, formField } from '../form/fields.ts'
import { rowsIn } from '../form/typed.ts'
import { faultOf, fieldView, label, lengthInput, meantOf, type Shown, select } from './field.ts'

/** A field as the form asks for it, once or row by row. */
export const askedView = (asked: FormField, shown: Shown): Html =>
  asked.field.value === 'rows' ? rowsView(asked, asked.field, shown) : fieldView(asked, shown)

/** Empty rows that a page comes with; saved, it comes with as many again. All of them weighed more than the rest of it. */
const SPARE = 5

/**
 * A list of rows, folded until it is wanted. The next empty row shows once the one before it has something in it, by the
 * sheet alone: with or without scripts, with or without signal.
 */
function rowsView({ name, label: says, hint }: FormField, field: FieldOf<'rows'>, shown: Shown): Html {
  const filled = rowsIn(shown.typed, name)
  const shows = Math.min(field.most, (filled.at(-1) ?? -1) + 1 + SPARE)
  const onRecord = shown.onRecord?.[name]
  const isOpen = filled.length > 0 || onRecord !== undefined
  return html`
    <details class="rows" ${flag('open', isOpen)}>
      <summary>${says}</summary>
      ${hint && html`<p class="soft">${hint}</p>`}
      ${onRecord && html`<p class="rec"><span class="soft">on record</span> ${onRecord}</p>`}
      ${faultOf(name, shown)}
      ${Array.from({ length: shows }, (_, row) => rowView(`${name}.${row}`, Object.keys(field.parts), shown))}
    </details>
  `
}

const rowView = (row: string, parts: readonly string[], shown: Shown): Html =>
  html`
    <fieldset class="row">
      <legend class="vh">${Number(row.split('.')[1]) + 1}</legend>
      ${parts.map((part) => cell(formField('component', `${row}.${part}`), shown))}
    </fieldset>
  `

/** How a length was taken is the same for all of a row, and is only carried along. */
function cell(asked: FormField, shown: Shown): Html {
  const { name, field, choices } = asked
  const box =
    field.value === 'choice'
      ? select(name, [{ value: '', says: 'Not stated' }, ...choices], shown)
      : html`<div class="pair">${lengthInput(name, shown)}</div>`
  return html`
    <div class="ask">
      ${label({ name, label: asked.label })}
      ${faultOf(name, shown)}
      ${field.value === 'length' && meantOf(name, shown)}
      ${box}
      ${['how', 'by'].map((it) => carried(`${name}.${it}`, shown))}
    </div>
  `
}

const carried = (name: string, { typed }: Shown): Html | null =>
  typed[name] ? html`<input type="hidden" name="${name}" value="${typed[name]}">` : null
