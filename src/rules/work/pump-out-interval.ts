import { err, ok, type Result } from '../../base/result.ts'
import { printNumber } from '../../measure/print/number.ts'
import type { Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { PumpOutYears } from '../values/pump-out-years.ts'
import type { NotStated } from './not-stated.ts'

/**
 * Years between pumpings. The table is not interpolated: the next smaller tank's row and the next larger household's
 * column are taken, so that the answer never runs late.
 */
export function pumpOutInterval(
  rule: Cited<PumpOutYears>,
  gal: number,
  people: number,
): Result<Worked<number>, NotStated> {
  const { table, rows, people: columns } = rule.value
  const row = rows.findLast((it) => it.gal <= gal)
  const column = columns.findIndex((it) => it >= people)
  const years = row && column >= 0 ? row.years[column] : undefined
  if (!row || years === undefined || years === null)
    return err({
      reason: 'beyond-table',
      says: `${table} has nothing for ${printNumber(gal)} gal and ${people} people`,
    })
  const step = {
    says: `${table}: ${citedInWords(rule)}`,
    formula: 'row of the next smaller tank, column of the next larger household',
    numbers: `${printNumber(row.gal)} gal, ${columns[column]} people`,
    result: `${years} years`,
  }
  return ok({ value: years, steps: [step] })
}
