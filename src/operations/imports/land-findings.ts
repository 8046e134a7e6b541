import { dayOf } from '../../base/plain-date.ts'
import { breathing } from '../../jobs/breathe.ts'
import { findingsEntry } from '../../reading/entry/findings.ts'
import { entryIssues } from '../../reading/entry/issues.ts'
import type { FindingsRecord } from '../../records/findings.ts'
import { canonicalText } from '../../store/canonical.ts'
import { firmsNamed, insertSubmitted, type SubmittedVisit, visitsOn } from '../../store/findings-at-once.ts'
import type { RowFault } from '../../store/import-rejections.ts'
import { lockParcels } from '../../store/many-parcels.ts'
import { visitAhead } from '../findings/findings-faults.ts'
import { findParcelsWritten } from './find-parcels-written.ts'
import { type Landed, rejected } from './landed.ts'
import type { Landing } from './landing.ts'
import { asRowFault, type RowEntry } from './row-entry.ts'

/** Takes visits in as handed in, each in the name of the firm that made it. A firm's visit of one day is one visit. */
export async function landFindings(landing: Landing, rows: readonly RowEntry[]): Promise<readonly Landed[]> {
  const { tx, county, format, at, by, newId } = landing
  const parcelOf = await findParcelsWritten(tx, county, format, rows)
  const firms = await firmsNamed(
    tx,
    rows.flatMap(({ beside }) => beside.get('firm') ?? []),
  )
  const landed: Landed[] = []
  const sound: { readonly row: RowEntry; readonly visit: Omit<SubmittedVisit, 'id'> }[] = []
  const breathe = breathing()
  for (const row of rows) {
    await breathe()
    const [found, firm] = [parcelOf(row), firmOf(row, firms)]
    const read = findingsEntry.safeParse(row.entry)
    const issues = read.success ? visitAhead(read.data, dayOf(at)) : entryIssues(read.error)
    const faults = [
      ...('fault' in found ? [found.fault] : []),
      ...('fault' in firm ? [firm.fault] : []),
      ...issues.map((issue) => asRowFault(row, issue)),
    ]
    if (read.success && 'parcel' in found && 'organization' in firm && faults.length === 0)
      sound.push({ row, visit: { parcel: found.parcel, organization: firm.organization, record: read.data } })
    else landed.push(rejected(row.line, ...faults))
  }
  const parcels = [...new Set(sound.map(({ visit }) => visit.parcel))]
  await lockParcels(tx, county, parcels)
  const known = new Map<string, FindingsRecord>(
    (await visitsOn(tx, county, parcels)).map((it) => [keyOf(it), it.record]),
  )
  const fresh: SubmittedVisit[] = []
  for (const { row, visit } of sound) {
    await breathe()
    const same = known.get(keyOf(visit))
    if (!same) {
      known.set(keyOf(visit), visit.record)
      fresh.push({ id: newId(), ...visit })
      landed.push({ line: row.line, became: 'added', parcel: visit.parcel })
    } else if (canonicalText(same) === canonicalText(visit.record)) {
      landed.push({ line: row.line, became: 'unchanged', parcel: null })
    } else {
      const origin = row.columns.get('visitedOn')
      landed.push(
        rejected(row.line, {
          column: origin?.column ?? 'visitedOn',
          had: origin?.had ?? visit.record.visitedOn,
          wants:
            'this firm’s findings of that day are here already and say something else: the firm amends them, or leave this row out',
        }),
      )
    }
  }
  await insertSubmitted(tx, county, fresh, { by, at })
  return landed
}

const keyOf = ({ parcel, organization, record }: Omit<SubmittedVisit, 'id'>): string =>
  `${parcel} ${organization} ${record.visitedOn}`

function firmOf(
  { beside, columns }: RowEntry,
  firms: ReadonlyMap<string, string>,
): { readonly organization: string } | { readonly fault: RowFault } {
  const name = beside.get('firm')
  const organization = name === undefined ? undefined : firms.get(name.toLowerCase())
  if (organization !== undefined) return { organization }
  const origin = columns.get('firm')
  const wants =
    name === undefined ? 'write which firm made the visit' : 'no firm of this name is admitted in this county'
  return { fault: { column: origin?.column ?? 'firm', had: origin?.had ?? name ?? null, wants } }
}
