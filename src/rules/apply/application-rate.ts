import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant } from '../../measure/print/number.ts'
import type { Step, Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { PercTable } from '../values/perc-table.ts'
import type { TextureTable } from '../values/texture-table.ts'
import { type NotStated, notStated } from './not-stated.ts'
import { percRow } from './perc-row.ts'

/** Application rate, gpd per sq ft, from a percolation rate (min/in) or a soil class, whichever the rule goes by. */
export function applicationRate(
  rule: Cited<PercTable> | Cited<TextureTable>,
  ground: { readonly minutesPerInch: number | null; readonly soil: string | null },
): Result<Worked<number>, NotStated> {
  if (isPerc(rule)) {
    if (ground.minutesPerInch === null) return err(notStated('needs-perc-rate', rule.value.table))
    const answer = percRow(rule, ground.minutesPerInch, ground.soil)
    if (!answer.ok) return answer
    const { gpdPerSqFt } = answer.value.value
    if (gpdPerSqFt === null) return err(notStated('no-rate', rule.value.table))
    return ok({ value: gpdPerSqFt, steps: answer.value.steps })
  }
  const { table, rows } = rule.value
  if (ground.soil === null) return err(notStated('needs-soil', table))
  const wanted = ground.soil.trim().toLowerCase()
  const row = rows.find((it) => it.soil.toLowerCase() === wanted)
  if (!row) {
    const known = rows.map((it) => it.soil)
    return err(notStated('no-such-soil', table, ground.soil, known))
  }
  const result = `${row.atLeast ? 'more than ' : ''}${n(row.gpdPerSqFt)} gpd/sq ft`
  const step: Step = {
    says: `${table}: ${citedInWords(rule)}`,
    formula: 'the row for the soil',
    numbers: row.soil,
    result,
  }
  return ok({ value: row.gpdPerSqFt, steps: [step] })
}

export const isPerc = (rule: Cited<PercTable> | Cited<TextureTable>): rule is Cited<PercTable> =>
  'rule' in rule.value

const n = (value: number): string => printSignificant(value, 6)
