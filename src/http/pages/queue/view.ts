import { DISCREPANCY_KINDS, SEVERITIES } from '../../../reconcile/kinds.ts'
import { KIND_TITLES } from '../../../words/titles.ts'
import { flag, type Html, html } from '../html.ts'
import { differenceAnchor, parcelPath } from '../layout/addresses.ts'
import { severityTag } from '../parts/severity.ts'
import { capital } from '../words/plain.ts'
import type { QueueQuery, ShownState } from './filter.ts'
import type { QueuePage, QueueRow } from './present.ts'

type Options = {
  readonly county: string
  readonly path: string
  readonly query: QueueQuery
  /** Address of the next page; null on the last. */
  readonly next: string | null
}

const STATE_WORDS: { readonly [S in ShownState]: string } = {
  'to-decide': 'to decide',
  decided: 'decided',
  vanished: 'gone',
  all: 'all',
}

export const queueView = ({ rows, counts, all }: QueuePage, { county, path, query, next }: Options): Html =>
  html`
    <h1>Queue</h1>
    ${filters(path, query)}
    ${
      counts &&
      html`
        <ul class="counts" aria-label="Counts by severity">
          ${counts.map(
            ({ severity, count, to, on }) =>
              html`
                <li>
                  <a href="${on ? all : to}"${on && html` aria-current="true"`}>
                    ${severityTag(severity)} <b>${count.toLocaleString('en-US')}</b>
                    ${on && html` <span class="soft">only these; show all</span>`}
                  </a>
                </li>
              `,
          )}
        </ul>
      `
    }
    ${
      rows.length === 0
        ? html`
          <p class="lead">
            Nothing
            matches. ${
              query.state === 'to-decide' && !narrowed(query)
                ? 'Every difference is decided.'
                : html`<a href="${path}">Show the whole queue</a>`
            }
          </p>
        `
        : html`
          <p class="soft keys">
            Most serious first, then oldest. Use the arrow keys to move and <kbd>Enter</kbd> to open.
          </p>
          <ol class="queue">${rows.map((it) => row(county, it))}</ol>
        `
    }
    <p class="pager">
      ${query.cursor !== undefined && html`<a href="${path}">First page</a> `}
      ${next && html`<a class="button" rel="next" href="${next}">Next page</a>`}
    </p>
  `

const narrowed = ({ severity, kind, since, parcel }: QueueQuery): boolean =>
  [severity, kind, since, parcel].some((asked) => asked !== undefined)

const row = (
  county: string,
  { id, severity, title, about, parcel, at, address, says, age, moved }: QueueRow,
): Html =>
  html`
    <li>
      ${severityTag(severity)}
      <a class="go" href="${parcelPath(county, at)}#${differenceAnchor(id)}">
        <b>${title}, ${about}</b> <span><span class="number">${parcel}</span> ${address}</span>
      </a>
      <span class="says">
        ${says}
        ${moved && html` <b>Decided earlier, but the evidence has changed.</b>`}
      </span><span class="age">${age}</span>
    </li>
  `

const filters = (path: string, { state, severity, kind, since, parcel }: QueueQuery): Html =>
  html`
    <form class="filters" action="${path}" aria-label="Filters">
      ${select('state', 'Show', Object.entries(STATE_WORDS), state)}
      ${select('severity', 'Severity', [['', 'Any'], ...SEVERITIES.map((it) => [it, capital(it)] as const)], severity)}
      ${select('kind', 'Kind', [['', 'Any'], ...DISCREPANCY_KINDS.map((it) => [it, KIND_TITLES[it]] as const)], kind)}
      <div>
        <label for="f-since">Changed since</label>
        <input id="f-since" name="since" type="date" value="${since}">
      </div>
      <div>
        <label for="f-parcel">Parcel</label>
        <input id="f-parcel" name="parcel" value="${parcel}" maxlength="80" size="14">
      </div>
      <div><button>Show</button></div>
    </form>
  `

const select = (
  name: string,
  label: string,
  choices: readonly (readonly [string, string])[],
  chosen: string | undefined,
): Html =>
  html`
    <div>
      <label for="f-${name}">${label}</label>
      <select id="f-${name}" name="${name}">
        ${choices.map(
          ([value, words]) =>
            html`
              <option value="${value}" ${flag('selected', value === (chosen ?? ''))}>${words}</option>
            `,
        )}
      </select>
    </div>
  `
