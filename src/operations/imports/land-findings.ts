import { canonicalText } from '../../base/canonical.ts'
import { dayOf } from '../../base/plain-date.ts'
import { breathing } from '../../jobs/breathe.ts'
import { findingsEntry } from '../../reading/entry/findings.ts'
import { readEntry } from '../../reading/entry/read-entry.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import {
  firmsNamed,
  insertSubmitted,
  inspectionsOn,
  type SubmittedInspection,
} from '../../store/findings-at-once.ts'
import type { RowFault } from '../../store/import-rejections.ts'
import { lockParcels } from '../../store/many-parcels.ts'
import { inspectionAhead } from '../findings/findings-faults.ts'
import { findParcelsWritten } from './find-parcels-written.ts'
import { findSystemsWritten } from './find-systems-written.ts'
import { type Landed, rejected } from './landed.ts'
import type { Landing } from './landing.ts'
import { asRowFault, type RowEntry } from './row-entry.ts'

/** Takes inspections in as submitted, each in the name of the firm that made it. A firm's inspection of one day is one inspection. */
export async function landFindings(landing: Landing, rows: readonly RowEntry[]): Promise<readonly Landed[]> {
  const { tx, county, format, at, by, newId } = landing
  const parcelOf = await findParcelsWritten(tx, county, format, rows)
  const firms = await firmsNamed(
    tx,
    rows.flatMap(({ beside }) => beside.get('firm') ?? []),
  )
  const landed: Landed[] = []
  const sound: { readonly row: RowEntry; readonly inspection: Omit<SubmittedInspection, 'id' | 'system'> }[] =
    []
  const breathe = breathing()
  for (const row of rows) {
    await breathe()
    const [found, firm] = [parcelOf(row), firmOf(row, firms)]
    const read = readEntry(findingsEntry, withReason(row.entry))
    const issues = read.ok ? inspectionAhead(read.value, dayOf(at)) : read.error
    const faults = [
      ...('fault' in found ? [found.fault] : []),
      ...('fault' in firm ? [firm.fault] : []),
      ...issues.map((issue) => asRowFault(row, issue)),
    ]
    if (read.ok && 'parcel' in found && 'organization' in firm && faults.length === 0)
      sound.push({
        row,
        inspection: { parcel: found.parcel, organization: firm.organization, record: read.value },
      })
    else landed.push(rejected(row.line, ...faults))
  }
  const parcels = [...new Set(sound.map(({ inspection }) => inspection.parcel))]
  await lockParcels(tx, county, parcels)
  const systemOf = await findSystemsWritten(tx, county, parcels)
  const known = new Map<string, FindingsRecord>(
    (await inspectionsOn(tx, county, parcels)).map((it) => [keyOf(it), it.record]),
  )
  const fresh: SubmittedInspection[] = []
  for (const { row, inspection: read } of sound) {
    await breathe()
    const of = systemOf(row, read.parcel)
    if ('fault' in of) {
      landed.push(rejected(row.line, of.fault))
      continue
    }
    const inspection = { ...read, system: of.system }
    const same = known.get(keyOf(inspection))
    if (!same) {
      known.set(keyOf(inspection), inspection.record)
      fresh.push({ id: newId(), ...inspection })
      landed.push({ line: row.line, became: 'added', parcel: inspection.parcel })
    } else if (canonicalText(same) === canonicalText(inspection.record)) {
      landed.push({ line: row.line, became: 'unchanged', parcel: null })
    } else {
      const origin = row.columns.get('inspectedOn')
      landed.push(
        rejected(row.line, {
          column: origin?.column ?? 'inspectedOn',
          had: origin?.had ?? inspection.record.inspectedOn,
          wants:
            'this firm already has other findings of that day: ask the firm to amend them, or leave out this row',
        }),
      )
    }
  }
  await insertSubmitted(tx, county, fresh, { by, at })
  return landed
}

/** A report that is imported can't be asked: what it leaves out without a word is left out because it does not say. */
const withReason = (entry: unknown): unknown =>
  typeof entry === 'object' && entry !== null && !('leftOutBecause' in entry)
    ? { ...entry, leftOutBecause: 'not-stated' }
    : entry

const keyOf = ({ system, organization, record }: Omit<SubmittedInspection, 'id'>): string =>
  `${system} ${organization} ${record.inspectedOn}`

function firmOf(
  { beside, columns }: RowEntry,
  firms: ReadonlyMap<string, string>,
): { readonly organization: string } | { readonly fault: RowFault } {
  const name = beside.get('firm')
  const organization = name === undefined ? undefined : firms.get(name.toLowerCase())
  if (organization !== undefined) return { organization }
  const origin = columns.get('firm')
  const wants =
    name === undefined
      ? 'write which firm did the inspection'
      : 'no firm of this name is admitted in this county'
  return { fault: { column: origin?.column ?? 'firm', had: origin?.had ?? name ?? null, wants } }
}
