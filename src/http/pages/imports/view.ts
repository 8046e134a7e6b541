import { TARGETS } from '../../../operations/imports/kinds.ts'
import { sayFault } from '../../../operations/imports/read-import.ts'
import type { Rejection } from '../../../store/import-rejections.ts'
import { IMPORT_KINDS, type Import, type ImportState } from '../../../store/imports.ts'
import { flag, type Html, html } from '../html.ts'
import { importsPath } from '../layout/addresses.ts'
import { counted } from '../words/plain.ts'
import { importPath, rejectedPath } from './addresses.ts'

const STATE_WORDS: { readonly [S in ImportState]: string } = {
  waiting: 'is ready to test or run',
  trying: 'is being tested',
  tried: 'was tested; nothing was saved',
  running: 'is running',
  done: 'is done',
  failed: 'stopped; run it again and it continues where it stopped',
}

export const listView = (county: string, list: readonly Import[], fault: string | null): Html =>
  html`
    <h1>Imports</h1>
    <p class="lead">
      Upload a list of permits, parcels or findings: a CSV file with headings, or one JSON object a
      line. Asfound suggests what each column means and you correct it. A test shows what would happen
      to each row before anything is saved.
    </p>
    ${fault !== null && html`<p role="alert" class="faults"><b>${fault}</b></p>`}
    <form method="post" action="${importsPath(county)}" enctype="multipart/form-data">
      <p>
        <label for="kind">Type of records</label> <select id="kind" name="kind">
          ${IMPORT_KINDS.map((kind) => html`<option>${kind}</option>`)}
        </select>
      </p>
      <p>
        <label for="file">File</label> <input id="file" name="file" type="file" required>
      </p>
      <p><button>Upload</button></p>
    </form>
    ${
      list.length > 0 &&
      html`
        <h2>Earlier imports</h2>
        <ul>
          ${list.map(
            (it) =>
              html`
                <li>
                  <a href="${importPath(county, it.id)}">${it.fileName ?? it.kind}</a>
                  ${` (${it.kind}) ${STATE_WORDS[it.state]}; ${counts(it)}`}
                </li>
              `,
          )}
        </ul>
      `
    }
  `

const counts = ({ rowsRead, added, changed, unchanged, rejected }: Import): string =>
  [
    `${counted(rowsRead, 'row')} read`,
    `${printed(added)} added`,
    `${printed(changed)} changed`,
    `${printed(unchanged)} unchanged`,
    `${printed(rejected)} rejected`,
  ].join(', ')

const printed = (count: number): string => count.toLocaleString('en-US')

type Shown = {
  readonly county: string
  readonly it: Import
  readonly faults: readonly { readonly message: string }[]
  readonly rejections: readonly Rejection[]
}

export const importView = ({ county, it, faults, rejections }: Shown): Html =>
  html`
    <p><a href="${importsPath(county)}">All imports</a></p>
    <h1>${it.fileName ?? `A list of ${it.kind}`}</h1>
    <p class="lead" role="status">
      This list of ${it.kind} ${STATE_WORDS[it.state]}. ${it.rowsRead > 0 && html`${counts(it)}.`} ${
        it.reason !== null && html`${it.reason}.`
      }
    </p>
    ${
      faults.length > 0 &&
      html`
        <div role="alert" class="faults">
          <p><b>Fix these first:</b></p>
          <ul>${faults.map(({ message }) => html`<li>${message}</li>`)}</ul>
        </div>
      `
    }
    ${rejections.length > 0 && rejected(county, it, rejections)}
    ${isOpen(it) && html`${mapping(county, it)}${faults.length === 0 && start(county, it)}`}
  `

const isOpen = ({ state }: Import): boolean => state === 'waiting' || state === 'tried' || state === 'failed'

const start = (county: string, it: Import): Html =>
  html`
    <form method="post" action="${importPath(county, it.id)}/trial">
      <p><button>Test</button> Checks every row and saves nothing.</p>
    </form>
    <form method="post" action="${importPath(county, it.id)}/run">
      <p><button>Run</button> Rows with errors are left out. All other rows are imported.</p>
    </form>
  `

const rejected = (county: string, it: Import, rejections: readonly Rejection[]): Html =>
  html`
    <h2>Rejected rows</h2>
    <p>
      <a class="button" href="${rejectedPath(county, it.id)}" download>Download them</a>, fix them and
      upload them again.
    </p>
    <ul>
      ${rejections.map(
        ({ line, faults }) => html`
        <li>Line ${line}: ${faults.map(sayFault).join('; ')}</li>
      `,
      )}
    </ul>
  `

const UNITS = ['gal', 'L', 'ft', 'in', 'm', 'cm']

/** One row for each column of the file: examples, the field it fills, its unit, and what its words mean. */
function mapping(county: string, it: Import): Html {
  const { head, mapping: now } = it
  const meaning = (column: string) => now.columns.find((own) => own.column === column)
  return html`
    <h2>What the columns mean</h2>
    <form method="post" action="${importPath(county, it.id)}/mapping">
      <input type="hidden" name="version" value="${it.revision}">
      <datalist id="targets">
        ${TARGETS[it.kind].map(({ to, says }) => html`<option value="${to}">${says}</option>`)}
      </datalist>
      <div class="scroll" tabindex="0" role="region" aria-label="Columns, table">
        <table>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">Examples</th>
              <th scope="col">Field</th>
              <th scope="col">Unit</th>
              <th scope="col">What its words mean</th>
            </tr>
          </thead>
          <tbody>
            ${head.headings.map(
              (column, index) =>
                html`
                  <tr>
                    <th scope="row">${column}</th>
                    <td>${examples(head.sample, index)}</td>
                    <td>
                      <input
                        name="to.${index}" list="targets" aria-label="Field for ${column}"
                        value="${meaning(column)?.to ?? ''}" maxlength="160"
                      >
                    </td>
                    <td>
                      <select name="unit.${index}" aria-label="Unit of ${column}">
                        <option></option>
                        ${UNITS.map(
                          (unit) => html`
                            <option ${flag('selected', meaning(column)?.unit === unit)}>${unit}</option>
                          `,
                        )}
                      </select>
                    </td>
                    <td>
                      <input
                        name="values.${index}"
                        aria-label="What the words of ${column} mean, for example NEW = new; REP = repair"
                        value="${pairs(meaning(column)?.values ?? {})}"
                      >
                    </td>
                  </tr>
                `,
            )}
          </tbody>
        </table>
      </div>
      <p>
        <label for="always">
          Values for rows that do not have their own, for
          example <code>kind = new; components.tank.material = concrete</code>
        </label>
      </p>
      <p><input id="always" name="always" size="60" value="${pairs(now.always)}"></p>
      <p><button>Save</button></p>
    </form>
  `
}

const examples = (sample: readonly (readonly string[])[], index: number): string =>
  [...new Set(sample.flatMap((row) => row[index] || []))].slice(0, 3).join(' · ').slice(0, 120)

const pairs = (values: Readonly<Record<string, string>>): string =>
  Object.entries(values)
    .map(([from, to]) => `${from} = ${to}`)
    .join('; ')
