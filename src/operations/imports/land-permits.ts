import { canonicalText } from '../../base/canonical.ts'
import { dayOf } from '../../base/plain-date.ts'
import { breathing } from '../../jobs/breathe.ts'
import { permitEntry } from '../../reading/entry/permit.ts'
import { readEntry } from '../../reading/entry/read-entry.ts'
import type { PermitRecord } from '../../records/permit.ts'
import { lockParcels } from '../../store/many-parcels.ts'
import { insertPermits, type PermitOnParcel, permitsNumbered } from '../../store/permits-at-once.ts'
import { datesAhead } from '../permits/permit-faults.ts'
import { findParcelsWritten } from './find-parcels-written.ts'
import { findSystemsWritten } from './find-systems-written.ts'
import { type Landed, rejected } from './landed.ts'
import type { Landing } from './landing.ts'
import { asRowFault, type RowEntry } from './row-entry.ts'

/** Puts permits into the files of their parcels. One paper is one permit: the same again changes nothing. */
export async function landPermits(landing: Landing, rows: readonly RowEntry[]): Promise<readonly Landed[]> {
  const { tx, county, format, at, by, importId, newId } = landing
  // Validated while the database looks for the parcels.
  const finding = findParcelsWritten(tx, county, format, rows)
  finding.catch(() => {})
  const breathe = breathing()
  const entries: ReturnType<typeof readEntry<PermitRecord>>[] = []
  for (const { entry } of rows) {
    entries.push(readEntry(permitEntry, entry))
    await breathe()
  }
  const parcelOf = await finding
  const landed: Landed[] = []
  const sound: { readonly row: RowEntry; readonly parcel: string; readonly record: PermitRecord }[] = []
  for (const [index, row] of rows.entries()) {
    const found = parcelOf(row)
    const read = entries[index]!
    const issues = read.ok ? datesAhead(read.value, dayOf(at)) : read.error
    const faults = [
      ...('fault' in found ? [found.fault] : []),
      ...issues.map((issue) => asRowFault(row, issue)),
    ]
    if (read.ok && 'parcel' in found && faults.length === 0)
      sound.push({ row, parcel: found.parcel, record: read.value })
    else landed.push(rejected(row.line, ...faults))
  }
  const parcels = [...new Set(sound.map(({ parcel }) => parcel))]
  await lockParcels(tx, county, parcels)
  const systemOf = await findSystemsWritten(tx, county, parcels)
  const known = new Map<string, PermitRecord>(
    (
      await permitsNumbered(
        tx,
        county,
        parcels,
        sound.map(({ record }) => record.number),
      )
    ).map((it) => [keyOf(it.parcel, it.record), it.record]),
  )
  const fresh: PermitOnParcel[] = []
  for (const { row, parcel, record } of sound) {
    await breathe()
    const key = keyOf(parcel, record)
    const same = known.get(key)
    const of = systemOf(row, parcel)
    if ('fault' in of) landed.push(rejected(row.line, of.fault))
    else if (!same) {
      known.set(key, record)
      fresh.push({
        id: newId(),
        parcel,
        system: of.system,
        record,
        sources: { '': { kind: 'imported', import: importId, line: row.line } },
      })
      landed.push({ line: row.line, became: 'added', parcel })
    } else if (canonicalText(same) === canonicalText(record)) {
      landed.push({ line: row.line, became: 'unchanged', parcel: null })
    } else landed.push(rejected(row.line, differs(row, record)))
  }
  await insertPermits(tx, county, fresh, { by, at })
  return landed
}

/** As `alreadyOnFile` has it for one: the same number in any writing, of the same kind, in one parcel's file. */
const keyOf = (parcel: string, { number, kind }: PermitRecord): string =>
  `${parcel} ${kind} ${number.toUpperCase().replace(/[^A-Z0-9]/g, '')}`

const differs = (row: RowEntry, { number, kind }: PermitRecord) => ({
  column: row.columns.get('number')?.column ?? 'number',
  had: row.columns.get('number')?.had ?? number,
  wants: `permit ${number} (${kind}) is already on file and is different: correct it there, or leave out this row`,
})
