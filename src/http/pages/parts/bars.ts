import { type Html, html } from '../html.ts'

const ROW = 24
const NAMES = 205
const LONGEST = 240

type Bar = { readonly name: string; readonly count: number }

/** A plain bar chart. What it shows stands in the table beside it, so that it is hidden from those who hear the page. */
export function bars(list: readonly Bar[]): Html {
  const most = Math.max(1, ...list.map(({ count }) => count))
  const height = list.length * ROW
  return html`
    <svg class="bars" viewBox="0 0 500 ${height}" aria-hidden="true" focusable="false">
      ${list.map(
        ({ name, count }, index) =>
          html`
            <text x="${NAMES - 8}" y="${index * ROW + 16}" text-anchor="end">${shortened(name)}</text>
            <rect
              x="${NAMES}" y="${index * ROW + 4}"
              width="${Math.max(1, Math.round((count / most) * LONGEST))}" height="16"
            />
            <text x="${NAMES + Math.round((count / most) * LONGEST) + 6}" y="${index * ROW + 16}">
              ${count.toLocaleString('en-US')}
            </text>
          `,
      )}
    </svg>
  `
}

const shortened = (name: string): string => (name.length > 30 ? `${name.slice(0, 29)}…` : name)
