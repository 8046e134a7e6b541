import { firstDay, type PartialDate, yearIn } from '../../base/partial-date.ts'
import type { PlainDate } from '../../base/plain-date.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { PermitRecord } from '../../records/permit.ts'
import type { PermitOnFile } from '../../store/permits.ts'

/** What a permit's own entry can't know: which day it is. `at` is the pointer of the record in the body. */
export function datesAhead(record: PermitRecord, today: PlainDate, at = ''): readonly EntryIssue[] {
  return (['issuedOn', 'approvedOn'] as const).flatMap((field) => {
    const day = record[field]
    if (day === null || firstDay(day) <= today) return []
    return [{ pointer: `${at}/${field}`, message: sayAhead(day, today) }]
  })
}

/** A year written with two figures is taken as 20__ up to 29, which may be a hundred years off. */
export function sayAhead(day: PartialDate, today: PlainDate): string {
  const before = `${yearIn(day) - 100}${day.slice(4)}`
  return `${day} is in the future: today is ${today}. If ${yearIn(day) - 100} is meant, write ${before}`
}

/** The permit of that number and kind that is already in the parcel's file; one paper is one permit. */
export const alreadyOnFile = (
  onFile: readonly PermitOnFile[],
  { number, kind }: PermitRecord,
): PermitOnFile | undefined =>
  onFile.find(({ record }) => record.kind === kind && plain(record.number) === plain(number))

const plain = (number: string): string => number.toUpperCase().replace(/[^A-Z0-9]/g, '')

export const sayOnFile = ({ id, record }: PermitOnFile): string =>
  `Permit ${record.number} (${record.kind}) is already in this parcel's file as ${id}. Correct that one instead.`

/** Why a permit that builds nothing is not corrected. */
export const notInFile = ({ standing, mergedInto }: PermitOnFile): string =>
  standing === 'void'
    ? 'This permit is void: restore it before you correct it.'
    : `This permit is merged into ${mergedInto}: correct that one, or separate them first.`
