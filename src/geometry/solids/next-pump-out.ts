import { addDays, type PlainDate } from '../../base/plain-date.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Step, type Worked, worked } from '../../measure/step.ts'
import { expanded, propagate, type Uncertain } from '../../measure/uncertain.ts'

/** Years between pumpings by tank size and people, as data; null where the table prints a dash. */
export type PumpOutTable = {
  readonly table: string
  readonly people: readonly number[]
  readonly rows: readonly { readonly gal: number; readonly years: readonly (number | null)[] }[]
}

export type NextPumpOut = {
  readonly years: Uncertain
  /** The day by the years, and the day by the fewest years the capacity's uncertainty leaves. */
  readonly dueOn: PlainDate
  readonly earliest: PlainDate
  /** The table has no entry for just this tank and household: the answer lies between its entries. */
  readonly interpolated: boolean
}

const DAYS_PER_YEAR = 365.25

/**
 * An estimate of when a tank will next want pumping: the table's years, linear between its entries in gallons and in
 * people (the table itself prints nothing between, so the answer says when it did), added to the last pumping. An
 * estimate and no rule: what is read in the tank decides. Refused outside the table, and where it prints a dash.
 */
export function nextPumpOut(
  table: PumpOutTable,
  gal: Uncertain,
  people: number,
  lastPumped: PlainDate,
): Result<Worked<NextPumpOut>, string> {
  const rows = between(
    table.rows.map((row) => row.gal),
    gal.value,
  )
  const columns = between(table.people, people)
  if (!rows || !columns)
    return err(
      `${table.table} has nothing for ${n(gal.value)} gal and ${n(people)} people: it is outside the table.`,
    )
  const entry = (row: number, column: number): number | null => table.rows[row]?.years[column] ?? null
  const corners = [
    [entry(rows.low, columns.low), entry(rows.low, columns.high)],
    [entry(rows.high, columns.low), entry(rows.high, columns.high)],
  ] as const
  const at = ([low, high]: readonly [number | null, number | null]): number | null =>
    low === null || high === null ? null : low + (high - low) * columns.share
  const [fewer, more] = [at(corners[0]), at(corners[1])]
  if (fewer === null || more === null)
    return err(`${table.table} prints a dash for ${n(gal.value)} gal and ${n(people)} people.`)
  const perGal = rows.span === 0 ? 0 : (more - fewer) / rows.span
  const years = propagate(fewer + (more - fewer) * rows.share, [gal], [perGal])
  const on = (count: number): PlainDate => addDays(lastPumped, Math.round(Math.max(0, count) * DAYS_PER_YEAR))
  const interpolated = rows.span > 0 || columns.span > 0
  const answer: NextPumpOut = {
    years,
    dueOn: on(years.value),
    earliest: on(years.value - expanded(years)),
    interpolated,
  }
  const step: Step = {
    says: interpolated
      ? `${table.table}: years, linear between its entries (our reading; the table prints none between)`
      : `${table.table}: years`,
    formula: interpolated ? 'between the entries around it' : 'the entry',
    numbers: `${n(gal.value)} gal, ${n(people)} people: ${[...new Set(corners.flat())].join(', ')}`,
    result: `${n(years.value, 3)} years, to ${answer.dueOn}`,
  }
  return ok(worked(answer, () => [step]))
}

type Between = { readonly low: number; readonly high: number; readonly share: number; readonly span: number }

/** Where a value lies in a rising list: the indices around it and how far it is from the lower; undefined outside. */
function between(values: readonly number[], wanted: number): Between | undefined {
  const exactly = values.indexOf(wanted)
  if (exactly >= 0) return { low: exactly, high: exactly, share: 0, span: 0 }
  const high = values.findIndex((value) => value > wanted)
  if (high <= 0) return undefined
  const [from, to] = [values[high - 1]!, values[high]!]
  return { low: high - 1, high, share: (wanted - from) / (to - from), span: to - from }
}
