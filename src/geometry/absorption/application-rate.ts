import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'
import { expanded, propagate, type Uncertain } from '../../measure/uncertain.ts'

/** One row of a table by percolation rate: up to `upTo` min/in (included), from just above the row before. */
export type RateRow = {
  readonly upTo: number
  readonly gpdPerSqFt: number | null
  readonly sqFtPerBedroom: number | null
}

/** A table by percolation rate, rows from fast to slow; the tables themselves are packs. */
export type RateTable = { readonly table: string; readonly rows: readonly RateRow[] }

/** The row a rate falls in, and the rows it may truly belong to within its uncertainty (k = 2), that one included. */
export type RateAnswer = {
  readonly row: RateRow
  readonly couldBe: readonly RateRow[]
  readonly slowerThanTable: boolean
}

/**
 * The row of a table for a percolation rate in min/in. Tables of law are read and not interpolated: a rate between two
 * rows takes the slower. A rate so near a boundary that its uncertainty crosses it names both rows; `slowerThanTable`
 * says that it may lie past the last. A rate past the last row is refused, with the table's name.
 */
export function rateFromTable(table: RateTable, minPerIn: Uncertain): Result<Worked<RateAnswer>, string> {
  if (!(minPerIn.value > 0)) return err('A percolation rate is more than zero minutes per inch.')
  const rowFor = (rate: number) => table.rows.findIndex(({ upTo }) => rate <= upTo)
  const at = rowFor(minPerIn.value)
  const row = table.rows[at]
  if (!row) return err(`${n(minPerIn.value)} min/in is slower than the last row of ${table.table}.`)
  const U = expanded(minPerIn)
  const [from, to] = [rowFor(minPerIn.value - U), rowFor(minPerIn.value + U)]
  const couldBe = table.rows.slice(from, to < 0 ? undefined : to + 1)
  return ok(
    worked({ row, couldBe, slowerThanTable: to < 0 }, () => [
      {
        says: `Row of ${table.table} for the percolation rate`,
        formula: 'the first row at least as slow',
        numbers: `${n(minPerIn.value)} ± ${n(U, 2)} min/in`,
        result: `to ${n(row.upTo)} min/in${couldBe.length > 1 ? ', near a boundary' : ''}`,
      },
    ]),
  )
}

/**
 * Application rate by Ryon's formula, Q = c ÷ √t gpd per sq ft, t in min/in. c = 5 is the form worked in the San
 * Joaquin County letter of 12 August 2002; slope −Q ÷ 2t.
 */
export function ryonRate(minPerIn: Uncertain, coefficient = 5): Worked<Uncertain> {
  const t = minPerIn.value
  const rate = coefficient / Math.sqrt(t)
  return worked(propagate(rate, [minPerIn], [-rate / (2 * t)]), () => [
    {
      says: 'Application rate by Ryon’s formula, t in min/in',
      formula: `Q = ${n(coefficient)} ÷ √t`,
      numbers: `${n(coefficient)} ÷ √(${n(t)})`,
      result: `${n(rate)} gpd/sq ft`,
    },
  ])
}

/** A table by soil texture or class. */
export type TextureRates = {
  readonly table: string
  readonly rows: readonly { readonly soil: string; readonly gpdPerSqFt: number }[]
}

/** The rate for a soil as the table names it, whatever the case and spacing; refused with the names it has. */
export function rateFromTexture({ table, rows }: TextureRates, soil: string): Result<Worked<number>, string> {
  const plain = (name: string) =>
    name
      .trim()
      .toLowerCase()
      .replace(/[\s-]+/g, ' ')
  const row = rows.find((entry) => plain(entry.soil) === plain(soil))
  if (!row)
    return err(`${table} has no soil "${soil}"; it has ${rows.map((entry) => entry.soil).join(', ')}.`)
  const says = `Rate of ${table} for the soil`
  const step = {
    says,
    formula: 'the row of that name',
    numbers: row.soil,
    result: `${n(row.gpdPerSqFt)} gpd/sq ft`,
  }
  return ok(worked(row.gpdPerSqFt, () => [step]))
}
