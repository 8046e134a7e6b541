import type { PermitPage } from '../../../operations/permits/read-permit-page.ts'
import { FILING_REASONS, type FilingAct } from '../../../records/filing.ts'
import type { FilingChange } from '../../../store/filing-changes.ts'
import { FILING_ACT_WORDS, FILING_REASON_WORDS } from '../../../words/filing.ts'
import { flag, type Html, html } from '../html.ts'
import { filingPath, parcelPath, permitPath } from '../layout/addresses.ts'
import { dayAt, dayInWords } from '../words/dates.ts'
import { capital } from '../words/plain.ts'
import type { TypedFiling } from './read-form.ts'

export type FilingReturned = { readonly typed: TypedFiling; readonly faults: readonly string[] }

type Shown = {
  readonly county: string
  readonly page: PermitPage
  readonly mayChange: boolean
  readonly returned: FilingReturned | null
}

/** A permit: what it says in short, where it is filed, how it came to be there, and what a reviewer can change about that. */
export function permitView({ county, page, mayChange, returned }: Shown): Html {
  const { permit, parcel, filingChanges, holds, into } = page
  const { number, kind, components } = permit.record
  const acts = actsFor(permit.standing)
  return html`
    <h1>Permit <span class="number">${number}</span> (${kind})</h1>
    ${
      permit.standing !== 'in-file' &&
      html`
        <div class="notice" role="status">
          <p>
            ${becomes(county, into)} It counts for nothing in the record.
          </p>
        </div>
      `
    }
    <p>
      In the file of <a href="${parcelPath(county, parcel.number)}">${parcel.number}</a>${whereAndWhen(page)}
    </p>
    <ul>
      ${components.map((it) => html`<li>${capital(it.tag)}: ${it.action} ${it.kind.replaceAll('-', ' ')}</li>`)}
    </ul>
    ${
      holds.length > 0 &&
      html`
        <section>
          <h2>Merged into this permit</h2>
          <ul>
            ${holds.map(
              (it) => html`
                <li>
                  <a href="${permitPath(county, it.id)}">${nameOf(it)}</a>
                </li>
              `,
            )}
          </ul>
        </section>
      `
    }
    ${page.alike.length > 0 && suspected(county, page)}
    ${filingChanges.length > 0 && history(county, page)}
    ${
      mayChange &&
      html`
        <section>
          <h2>Change how it is filed</h2>
          <p class="soft">
            Nothing is deleted, and each of these can be undone. Decisions that stood on this permit stay: check
            them in the parcel’s file. Letters already issued show as superseded.
          </p>
          ${acts.map((act) => filingForm(county, permit.id, act, returned, permit.revision))}
        </section>
      `
    }
  `
}

/** The same number elsewhere may be the same paper; only a person can tell. */
const suspected = (county: string, { alike }: PermitPage): Html => html`
  <section>
    <h2>Same number in other files</h2>
    <p>Compare them. If they are the same paper, merge the one that is filed wrong into the one that stays.</p>
    <ul>
      ${alike.map(
        (it) => html`
          <li>
            <a href="${permitPath(county, it.id)}">${it.number} (${it.kind})</a> in the file of <a
              href="${parcelPath(county, it.parcelNumber)}"
            >${it.parcelNumber}</a>${it.address ? `, ${it.address}` : ''}. <span class="soft">Id ${it.id}</span>
          </li>
        `,
      )}
    </ul>
  </section>
`

const becomes = (county: string, into: PermitPage['into']): Html | string =>
  into
    ? html`This permit was merged into <a href="${permitPath(county, into.id)}">${nameOf(into)}</a>, which stays.`
    : 'This permit is void.'

const nameOf = ({ record: { number, kind } }: PermitPage['permit']): string => `${number} (${kind})`

const whereAndWhen = ({ parcel: { address }, permit: { record } }: PermitPage): string =>
  [
    `${address ? `, ${address}` : ''}.`,
    record.issuedOn ? `Issued ${dayInWords(record.issuedOn)}.` : 'No issue date.',
    record.approvedOn ? `Approved ${dayInWords(record.approvedOn)}.` : 'No final approval.',
  ].join(' ')

const actsFor = (standing: PermitPage['permit']['standing']): readonly FilingAct[] =>
  standing === 'void' ? ['restore'] : standing === 'merged' ? ['separate'] : ['move', 'merge', 'void']

const history = (county: string, { filingChanges, names, numbers }: PermitPage): Html => {
  const where = ({ act, fromParcel, toParcel }: FilingChange) => {
    const link = (id: string) =>
      html`<a href="${parcelPath(county, numbers.get(id) ?? id)}">${numbers.get(id) ?? id}</a>`
    return act === 'move' && html` from ${link(fromParcel)} to ${link(toParcel)}`
  }
  return html`
    <section>
      <h2>How it was filed</h2>
      <ul>
        ${filingChanges.map(
          (it) => html`
            <li>
              ${dayAt(it.changedAt)}: ${FILING_ACT_WORDS[it.act]}${where(it)}${names.has(it.changedBy) && ` by ${names.get(it.changedBy)}`},
              because ${FILING_REASON_WORDS[it.reason]}.
              ${it.note && html`<br><span class="soft">${it.note}</span>`}
            </li>
          `,
        )}
      </ul>
    </section>
  `
}

const TITLES: { readonly [A in FilingAct]: string } = {
  move: 'Move to another parcel',
  merge: 'Merge into another permit',
  void: 'Void',
  restore: 'Restore',
  separate: 'Separate again',
}

function filingForm(
  county: string,
  id: string,
  act: FilingAct,
  returned: FilingReturned | null,
  revision: number,
): Html {
  const own = returned?.typed.act === act ? returned : null
  const typed = own?.typed
  const at = (name: string): string => `${name}-${act}`
  return html`
    <details class="decide" ${flag('open', own !== null)}>
      <summary class="button">${TITLES[act]}</summary>
      <form method="post" action="${filingPath(county, id)}" novalidate>
        ${
          own &&
          html`
            <div class="notice bad" role="alert">
              <p>Nothing is saved yet. What you typed is still there.</p>
              <ul>${own.faults.map((it) => html`<li>${it}</li>`)}</ul>
            </div>
          `
        }
        <input type="hidden" name="act" value="${act}">
        <input type="hidden" name="version" value="${revision}">
        <div class="fields">
        ${act === 'move' && field(at('toParcel'), 'toParcel', 'Parcel number', typed?.toParcel ?? '')}
        ${act === 'merge' && field(at('into'), 'into', 'Permit that stays: the id at the end of its page’s address', typed?.into ?? '')}
        <div>
        <label for="${at('reason')}">Reason</label>
        <select id="${at('reason')}" name="reason">
          <option value="">Choose</option>
          ${FILING_REASONS[act].map(
            (it) => html`
              <option value="${it}" ${flag('selected', typed?.reason === it)}>${capital(FILING_REASON_WORDS[it])}</option>
            `,
          )}
        </select>
        </div>
        </div>
        <label for="${at('note')}">
          In your own words <span class="soft">only reviewers read this</span>
        </label>
        <textarea id="${at('note')}" name="note" rows="2" maxlength="2000">${typed?.note ?? ''}</textarea>
        <p><button>${TITLES[act]}</button></p>
      </form>
    </details>
  `
}

const field = (id: string, name: string, label: string, value: string): Html => html`
  <div>
    <label for="${id}">${label}</label>
    <input id="${id}" name="${name}" value="${value}" maxlength="80">
  </div>
`
