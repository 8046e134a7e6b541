import { z } from 'zod'
import { breathing } from '../../jobs/breathe.ts'
import { line, optional } from '../../reading/entry/fields.ts'
import { dateEntry } from '../../reading/entry/quantity.ts'
import { readEntry } from '../../reading/entry/read-entry.ts'
import { canonicalParcelNumber } from '../../reading/parcel-number.ts'
import {
  type ListedParcel,
  listParcels,
  type ParcelOnList,
  parcelsListed,
} from '../../store/parcels-at-once.ts'
import { type Landed, rejected } from './landed.ts'
import type { Landing } from './landing.ts'
import { asRowFault, type RowEntry } from './row-entry.ts'

/** Numbers with `;` between them: a comma separates columns, and stands in no parcel number. */
const numbers = optional(
  z
    .string()
    .transform((text) => text.split(/\s*[;|]\s*/).filter((number) => number !== ''))
    .pipe(z.array(line(60)).max(50, 'at most 50 numbers')),
)

const parcelEntry = z.strictObject({
  number: line(60),
  address: optional(line(200)),
  oldNumbers: numbers,
  splitFrom: numbers,
  mergedFrom: numbers,
  changedOn: optional(dateEntry),
  retiredOn: optional(dateEntry),
})
type ParcelEntry = z.output<typeof parcelEntry>

/**
 * Puts parcels on the county's list, with the numbers that lead to them. A parcel that others were split from or merged
 * into is retired on that day and kept, so that its number goes on finding what became of it.
 */
export async function landParcels(landing: Landing, rows: readonly RowEntry[]): Promise<readonly Landed[]> {
  const { tx, county, format, newId } = landing
  const landed: Landed[] = []
  const sound: { readonly row: RowEntry; readonly parcel: ParcelEntry }[] = []
  const breathe = breathing()
  for (const row of rows) {
    await breathe()
    const read = readEntry(parcelEntry, Object.fromEntries(row.beside))
    const number = read.ok ? canonicalParcelNumber(read.value.number, format) : null
    const issues = read.ok ? unsaid(read.value) : [...read.error]
    if (number && !number.ok) issues.push({ pointer: '/number', message: number.error })
    if (read.ok && number?.ok && issues.length === 0)
      sound.push({ row, parcel: { ...read.value, number: number.value } })
    else landed.push(rejected(row.line, ...issues.map((issue) => asRowFault(row, issue))))
  }
  const parents = sound
    .flatMap(({ parcel }) => parentsOf(parcel))
    .flatMap((text) => {
      const number = canonicalParcelNumber(text, format)
      return number.ok ? [number.value] : []
    })
  const listed = await parcelsListed(tx, county, [...sound.map(({ parcel }) => parcel.number), ...parents])
  const known = new Map(listed.map((it) => [it.number, it]))
  const changes = new Map<string, ListedParcel>()
  for (const { row, parcel } of sound) {
    const before = known.get(parcel.number)
    const now = merged(before, parcel, newId)
    const retired = parentsOf(parcel).flatMap((text) => {
      const number = canonicalParcelNumber(text, format)
      const parent = number.ok ? known.get(number.value) : undefined
      return parent && parent.retiredOn === null && parent.number !== parcel.number ? [parent] : []
    })
    for (const parent of retired)
      remember({ ...parent, retiredOn: parcel.changedOn, aliases: [], isNew: false })
    if (before && !now.differs && retired.length === 0)
      landed.push({ line: row.line, became: 'unchanged', parcel: null })
    else {
      landed.push({ line: row.line, became: before ? 'changed' : 'added', parcel: null })
      if (now.differs || !before)
        remember({ ...now.parcel, isNew: !before || (changes.get(now.parcel.number)?.isNew ?? false) })
    }
  }
  await listParcels(tx, county, [...changes.values()])
  return landed

  /** A row sees what the rows before it in the same batch did. */
  function remember(change: ListedParcel): void {
    const earlier = changes.get(change.number)
    const all = [...(earlier?.aliases ?? []), ...change.aliases]
    changes.set(change.number, { ...change, aliases: all, isNew: earlier?.isNew ?? change.isNew })
    const before = known.get(change.number)
    known.set(change.number, {
      ...change,
      knownAs: [...(before?.knownAs ?? []), ...change.aliases.map(({ number }) => number)],
    })
  }
}

const parentsOf = ({ splitFrom, mergedFrom }: ParcelEntry): readonly string[] => [
  ...(splitFrom ?? []),
  ...(mergedFrom ?? []),
]

function unsaid(parcel: ParcelEntry): { pointer: string; message: string }[] {
  if (parentsOf(parcel).length === 0 || parcel.changedOn !== null) return []
  return [
    {
      pointer: '/changedOn',
      message: 'write the day of the split or merger: the old parcels end on that day',
    },
  ]
}

function merged(before: ParcelOnList | undefined, parcel: ParcelEntry, newId: () => string) {
  const knownAs = new Set(before?.knownAs)
  const aliases = [
    ...(parcel.oldNumbers ?? []).map((number) => ({ number, kind: 'renumbered' as const })),
    ...(parcel.splitFrom ?? []).map((number) => ({ number, kind: 'split' as const })),
    ...(parcel.mergedFrom ?? []).map((number) => ({ number, kind: 'merged' as const })),
  ]
    .filter(({ number }) => !knownAs.has(number) && number !== parcel.number)
    .map((alias) => ({ ...alias, changedOn: parcel.changedOn }))
  // What the file does not say is no change: an index of numbers alone takes nobody's address away.
  const address = parcel.address ?? before?.address ?? null
  const retiredOn = parcel.retiredOn ?? before?.retiredOn ?? null
  return {
    parcel: { id: before?.id ?? newId(), number: parcel.number, address, retiredOn, aliases },
    differs:
      aliases.length > 0 ||
      address !== (before?.address ?? null) ||
      retiredOn !== (before?.retiredOn ?? null),
  }
}
