import { firstDay } from '../../base/partial-date.ts'
import { daysBetween, type PlainDate } from '../../base/plain-date.ts'
import { parseLength } from '../../measure/parse/length.ts'
import { parseVolume } from '../../measure/parse/volume.ts'
import { parsePartialDate } from '../date.ts'

/** Four figures alone may be a year or anything else. */
const YEAR = /^\s*\d{4}\s*$/
const ORIGIN = '1900-01-01' as PlainDate

/** A proposed value as a plain number for arithmetic: ft, gal, days since 1900, or itself; null where it is none. */
export function amountOf(value: string | number): number | null {
  if (typeof value === 'number') return value
  const day = YEAR.test(value) ? null : parsePartialDate(value)
  if (day?.ok) return daysBetween(ORIGIN, firstDay(day.value))
  const length = parseLength(value)
  if (length.ok) return length.value.ft
  const volume = parseVolume(value)
  if (volume.ok) return volume.value.gal
  return null
}
