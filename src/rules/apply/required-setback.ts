import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import { GENERAL_FROM, GENERAL_TO, type SetbackFrom, type SetbackTo } from '../things.ts'
import type { SetbackRow, SetbackTable } from '../values/setback-table.ts'
import { type NotStated, notStated } from './not-stated.ts'

/** The unconditional distance, and the rows that hold only under a condition in the source's words. */
export type RequiredSetback = {
  readonly ft: number
  readonly row: SetbackRow
  readonly conditional: readonly SetbackRow[]
}

/**
 * Silent on the thing asked for. `narrower`: the rows of things that fall under it, where the table knows only those
 * (a slab and a basement wall, and never a foundation): what holds then hangs on which of them it is.
 */
export type SetbackNotStated = NotStated & { readonly narrower: readonly SetbackRow[] }

/** The thing, then what it falls under, and so on outward. */
function* upward<T extends string>(thing: T, general: Partial<Record<T, T>>): Generator<T> {
  for (let it: T | undefined = thing; it !== undefined; it = general[it]) yield it
}

/** Least horizontal distance, ft. A table without a row for the thing itself answers by the thing it falls under. */
export function requiredSetback(
  rule: Cited<SetbackTable>,
  from: SetbackFrom,
  to: SetbackTo,
): Result<Worked<RequiredSetback>, SetbackNotStated> {
  const { table, rows } = rule.value
  for (const f of upward(from, GENERAL_FROM))
    for (const t of upward(to, GENERAL_TO)) {
      const matching = rows.filter((it) => it.from === f && it.to === t)
      const row = matching.find((it) => it.when === null)
      if (!row) continue
      const conditional = matching.filter((it) => it.when !== null)
      const except = conditional.map((it) => `; ${printSignificant(it.ft)} ft ${it.when}`).join('')
      const step = {
        says: `${table}: ${citedInWords(rule)}`,
        formula: 'the row for the two things',
        numbers: `${words(f)} to ${words(t)}${except}`,
        result: `${printSignificant(row.ft)} ft`,
      }
      return ok({ value: { ft: row.ft, row, conditional }, steps: [step] })
    }
  const ways = [...upward(from, GENERAL_FROM)]
  const under = (thing: SetbackTo): boolean => thing !== to && [...upward(thing, GENERAL_TO)].includes(to)
  const narrower = rows.filter((it) => ways.includes(it.from) && under(it.to))
  const among = narrower.map((it) => `${words(it.to)} ${printSignificant(it.ft)} ft`)
  return err({ ...notStated('no-such-pair', table, `${words(from)} to ${words(to)}`, among), narrower })
}

const words = (thing: string): string => thing.replaceAll('-', ' ')
