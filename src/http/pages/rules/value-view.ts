import type { Citation } from '../../../rules/citation.ts'
import { type Html, html } from '../html.ts'
import { citations } from '../parts/citation.ts'
import { capital, counted } from '../words/plain.ts'

type Fields = Readonly<Record<string, unknown>>

/** A rule's value as it stands in its pack: lists of alike rows as tables, the rest as named lines; empty ones left out. */
export function ruleValue(value: unknown, inside = false): Html {
  if (Array.isArray(value)) return list(value)
  if (typeof value === 'object' && value !== null) return fields(value as Fields, inside)
  return html`${plainValue(value)}`
}

function fields(value: Fields, inside: boolean): Html {
  const { amount, unit } = value
  if (amount !== undefined && unit !== undefined) return html`${String(amount)} ${String(unit)}`
  if (value.count !== undefined && unit !== undefined)
    return html`${counted(Number(value.count), String(unit).replace(/s$/, ''))}`
  // Nought stands for "none of it" here; in a table of figures it would be a figure, and stays.
  const shown = Object.entries(value).filter(([, part]) => says(part) && part !== 0)
  if (inside && shown.every(([, part]) => isFlat(part)))
    return html`${shown.map(([name, part]) => `${worded(name)}: ${plainValue(part)}`).join('; ')}`
  return html`
    <dl class="value">
      ${shown.map(
        ([name, part]) => html`<div><dt>${worded(name)}</dt><dd>${ruleValue(part, true)}</dd></div>`,
      )}
    </dl>
  `
}

function list(value: readonly unknown[]): Html {
  if (value.every((row) => typeof row !== 'object' || row === null))
    return html`${value.map(plainValue).join(', ')}`
  const rows = value as readonly Fields[]
  if (rows.some((row) => typeof row.says === 'string')) return html`<ul>${rows.map(item)}</ul>`
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))].filter((name) =>
    rows.some((row) => says(row[name]) && row[name] !== false),
  )
  const flat = rows.every((row) => columns.every((name) => isFlat(row[name])))
  if (!flat) return html`<ol class="value">${rows.map((row) => html`<li>${namedItem(row)}</li>`)}</ol>`
  return html`
    <table>
      <thead>
        <tr>${columns.map((name) => html`<th scope="col">${worded(name)}</th>`)}</tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) => html`
          <tr>${columns.map((name) => html`<td>${plainValue(row[name])}</td>`)}</tr>
        `,
        )}
      </tbody>
    </table>
  `
}

/** A fact or an expectation: its sentence, its time, its sources. */
const item = ({ says: sentence, from, until, citations: cited }: Fields): Html =>
  html`
    <li>
      ${capital(String(sentence))}
      ${
        (from ?? until) !== null &&
        html` <span class="soft">
          (${from !== null && `from ${from}`}${from !== null && until !== null && ', '}
          ${until !== null && `until ${until}`})
        </span>
        `
      }
      ${citations((cited ?? []) as readonly Citation[])}
    </li>
  `

const namedItem = ({ citations: cited, id: _, ...rest }: Fields): Html =>
  html`${fields(rest, false)}${cited !== undefined && citations(cited as readonly Citation[])}`

const isFlat = (value: unknown): boolean =>
  typeof value !== 'object' ||
  value === null ||
  (Array.isArray(value) && value.every((one) => typeof one !== 'object' || one === null))

const says = (value: unknown): boolean =>
  value !== null && value !== undefined && value !== '' && !(Array.isArray(value) && value.length === 0)

function plainValue(value: unknown): string {
  if (value === null || value === undefined) return ''
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return value.map(plainValue).join(', ')
  if (typeof value === 'number') return value.toLocaleString('en-US', { maximumFractionDigits: 6 })
  return String(value).replaceAll('-', ' ')
}

/** `gpdPerSqFt` is read as `gpd per sq ft`. */
const worded = (name: string): string => name.replace(/[A-Z]/g, (sign) => ` ${sign.toLowerCase()}`)
