import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step, Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { PercRow, PercTable } from '../values/perc-table.ts'
import { type NotStated, notStated } from './not-stated.ts'

/** What a percolation table says of one reading; either column may be missing from the source. */
export type PercAnswer = {
  readonly sqFtPerBedroom: number | null
  readonly gpdPerSqFt: number | null
  readonly row: PercRow | null
}

const UNITS = { 'minutes-per-inch': 'min/in', 'minutes-for-last-6-inches': 'min for the last 6 in' } as const

/** A reading in minutes per inch, in the units the table is kept in. */
const inTableUnits = (table: PercTable, minutesPerInch: number): number =>
  table.reading === 'minutes-per-inch' ? minutesPerInch : minutesPerInch * 6

/**
 * The row for a percolation rate in minutes per inch. Never interpolated: a reading between two rows takes the slower
 * one, as the tables are meant to be read. `soil` picks a row that is kept for one soil only.
 */
export function percRow(
  rule: Cited<PercTable>,
  minutesPerInch: number,
  soil: string | null = null,
  what: 'trench' | 'bed' | 'pit' = 'trench',
): Result<Worked<PercAnswer>, NotStated> {
  const table = rule.value
  if (!(minutesPerInch > 0) || !Number.isFinite(minutesPerInch))
    return err(notStated('needs-perc-rate', table.table))
  const t = inTableUnits(table, minutesPerInch)
  const reading = `${n(t)} ${UNITS[table.reading]}`
  if (table.fastest && t < table.fastest.limit) {
    const { beyond } = table.fastest
    return err(notStated(beyond === 'unsuitable' ? beyond : 'beyond-table', table.table, reading))
  }
  if (what === 'pit' && table.pitsSlowest !== null && t > table.pitsSlowest)
    return err(notStated('unsuitable', table.table, `${reading} for seepage pits`))
  const slowest = table.rule === 'rows' ? table.rows.at(-1)!.upTo : table.slowest
  if (slowest !== null && t > slowest) {
    return err(notStated(table.slower === 'unsuitable' ? 'unsuitable' : 'beyond-table', table.table, reading))
  }
  if (table.rule === 'inverse-root') {
    const coefficient = (what === 'bed' ? table.bedCoefficient : null) ?? table.coefficient
    const counted = Math.max(t, table.quickest ?? 0)
    const rate = coefficient / Math.sqrt(counted)
    const step: Step = {
      says: `${table.table}: ${citedInWords(rule)}`,
      formula: `${n(coefficient)} / √t${table.quickest === null ? '' : `, t at least ${n(table.quickest)}`}`,
      numbers: `${n(coefficient)} / √${n(counted)}`,
      result: `${n(rate)} gpd/sq ft`,
    }
    return ok({ value: { sqFtPerBedroom: null, gpdPerSqFt: rate, row: null }, steps: [step] })
  }
  const fits = (it: PercRow) => it.upTo >= t
  const own =
    soil === null
      ? undefined
      : table.rows.find((it) => fits(it) && it.texture?.toLowerCase() === soil.toLowerCase())
  const general = table.rows.find((it) => fits(it) && it.texture === null)
  const row = own && (!general || own.upTo <= general.upTo) ? own : general
  if (!row) return err(notStated('needs-soil', table.table, reading))
  const columns = [
    row.sqFtPerBedroom === null ? null : `${n(row.sqFtPerBedroom)} sq ft per bedroom`,
    row.gpdPerSqFt === null ? null : `${n(row.gpdPerSqFt)} gpd/sq ft`,
  ]
  const step: Step = {
    says: `${table.table}: ${citedInWords(rule)}`,
    formula: 'the first row at least as slow as the reading',
    numbers: `${reading}: row to ${n(row.upTo)}${row.texture === null ? '' : `, ${row.texture}`}`,
    result: columns.filter((it) => it !== null).join(', '),
  }
  return ok({ value: { sqFtPerBedroom: row.sqFtPerBedroom, gpdPerSqFt: row.gpdPerSqFt, row }, steps: [step] })
}

const n = (value: number): string => printSignificant(value, 6)
