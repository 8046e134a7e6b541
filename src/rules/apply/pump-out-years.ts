import { err, ok, type Result } from '../../base/result.ts'
import { printNumber } from '../../measure/print/number.ts'
import type { Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { PumpOutYears } from '../values/pump-out-years.ts'
import { type NotStated, notStated } from './not-stated.ts'

/** Years between pumpings: the largest size of the table that the tank reaches, and the people who live there. Nothing is interpolated. */
export function pumpOutYears(
  rule: Cited<PumpOutYears>,
  gal: number,
  people: number,
): Result<Worked<number>, NotStated> {
  const { table, people: columns, rows } = rule.value
  const row = rows.findLast((it) => it.gal <= gal)
  const years = row?.years[columns.indexOf(people)] ?? null
  if (!row) return err(notStated('beyond-table', table, `${printNumber(gal)} gal`))
  if (years === null) return err(notStated('beyond-table', table, `${people} people`))
  return ok({
    value: years,
    steps: [
      {
        says: `${table}: ${citedInWords(rule)}`,
        formula: 'the row of the tank’s size, the column of the people',
        numbers: `${row.gal} gal, ${people} people`,
        result: `${years} years`,
      },
    ],
  })
}
