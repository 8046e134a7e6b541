import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { SetbackFrom, SetbackTo } from '../things.ts'
import type { SetbackTable } from '../values/setback-table.ts'
import { requiredSetback, type SetbackNotStated } from './required-setback.ts'

/**
 * The least distance that holds, ft, from the mildest row to the strictest: one figure where the table has the thing itself,
 * and a span where it knows only what falls under it (a slab and a basement wall, and never a building).
 */
export type SetbackSpan = {
  readonly mildest: number
  readonly strictest: number
  readonly steps: readonly Step[]
}

export function setbackSpan(
  rule: Cited<SetbackTable>,
  from: SetbackFrom,
  to: SetbackTo,
): Result<SetbackSpan, SetbackNotStated> {
  const required = requiredSetback(rule, from, to)
  if (required.ok) {
    const { ft } = required.value.value
    return ok({ mildest: ft, strictest: ft, steps: required.value.steps })
  }
  const rows = required.error.narrower.filter(({ when }) => when === null)
  if (rows.length === 0) return err(required.error)
  const feet = rows.map(({ ft }) => ft)
  const step: Step = {
    says: `${rule.value.table}: ${citedInWords(rule)}`,
    formula: 'the rows for what it may be',
    numbers: rows
      .map((row) => `${plain(row.from)} to ${plain(row.to)} ${printSignificant(row.ft)} ft`)
      .join(', '),
    result: `${[...new Set([Math.min(...feet), Math.max(...feet)])].map((ft) => printSignificant(ft)).join(' to ')} ft`,
  }
  return ok({ mildest: Math.min(...feet), strictest: Math.max(...feet), steps: [step] })
}

const plain = (thing: string): string => thing.replaceAll('-', ' ')
