import { err, ok, type Result } from '../../base/result.ts'
import { printNumber, printSignificant } from '../../measure/print/number.ts'
import type { Step, Worked } from '../../measure/step.ts'
import type { Cited } from '../citation.ts'
import type { PercTable } from '../values/perc-table.ts'
import type { TextureTable } from '../values/texture-table.ts'
import { applicationRate, isPerc } from './application-rate.ts'
import { type NotStated, notStated } from './not-stated.ts'
import { percRow } from './perc-row.ts'

/** Area by one column of the source; `disagrees` where the source's other column gives another area by more than 1 %. */
export type RequiredArea = {
  readonly sqFt: number
  readonly by: 'area-per-bedroom' | 'application-rate'
  readonly other: { readonly sqFt: number; readonly by: 'area-per-bedroom' | 'application-rate' } | null
  readonly counts: PercTable['counts']
}

export type AbsorptionFacts = {
  readonly minutesPerInch: number | null
  readonly soil: string | null
  readonly bedrooms: number | null
  readonly flowGpd: number | null
  /** A bed takes the table's bed factor; everything else but a pit is read as trench. */
  readonly bed: boolean
  /** Seepage pits and nothing else. */
  readonly pit?: boolean
  /** Gravel below the pipe, inches, where a table gives credit for it; a bed gets none. */
  readonly gravelIn?: number | null
}

/**
 * Absorption area required, sq ft, of the surface the table counts. A table that prints both columns may contradict
 * itself: area per bedroom answers where bedrooms are known, and what the other column gives stands beside it.
 */
export function requiredAbsorption(
  rule: Cited<PercTable> | Cited<TextureTable>,
  facts: AbsorptionFacts,
): Result<Worked<RequiredArea>, NotStated> {
  const steps: Step[] = []
  let perBedroom: number | null = null
  let rate: number | null = null
  if (isPerc(rule)) {
    if (rule.value.pitsOnly && !facts.pit) return err(notStated('pits-only', rule.value.table))
    if (facts.minutesPerInch === null) return err(notStated('needs-perc-rate', rule.value.table))
    const beyond = flowBeyond(rule.value, facts.flowGpd)
    if (beyond) return err(beyond)
    const what = facts.pit ? 'pit' : facts.bed ? 'bed' : 'trench'
    const answer = percRow(rule, facts.minutesPerInch, facts.soil, what)
    if (!answer.ok) return answer
    perBedroom = answer.value.value.sqFtPerBedroom
    rate = answer.value.value.gpdPerSqFt
    steps.push(...answer.value.steps)
  } else {
    const answer = applicationRate(rule, facts)
    if (!answer.ok) return answer
    rate = answer.value.value
    steps.push(...answer.value.steps)
  }
  const change = changeOf(rule, facts)
  if (!change.ok) return change
  const areas: { sqFt: number; by: 'area-per-bedroom' | 'application-rate' }[] = []
  const { leastBedrooms = 0, leastSqFt = 0 } = isPerc(rule) ? rule.value : {}
  const add = (by: 'area-per-bedroom' | 'application-rate', says: string, plain: Plain): void => {
    const { factor, formula, numbers } = change.value
    const changed = plain.sqFt * factor
    const sqFt = Math.max(leastSqFt, changed)
    areas.push({ sqFt, by })
    const result = `${printNumber(changed, 1)} sq ft`
    steps.push({ says, formula: plain.formula + formula, numbers: plain.numbers + numbers, result })
    if (sqFt > changed) steps.push(leastStep(leastSqFt, changed))
  }
  if (perBedroom !== null && facts.bedrooms !== null) {
    const bedrooms = Math.max(leastBedrooms, facts.bedrooms)
    const least = bedrooms > facts.bedrooms ? `, at least ${leastBedrooms}` : ''
    add('area-per-bedroom', 'Area from the bedroom count', {
      sqFt: perBedroom * bedrooms,
      formula: `A = area per bedroom · bedrooms${least}`,
      numbers: `${n(perBedroom)} × ${bedrooms}`,
    })
  }
  if (rate !== null && facts.flowGpd !== null) {
    add('application-rate', 'Area from the design flow', {
      sqFt: facts.flowGpd / rate,
      formula: 'A = Q / rate',
      numbers: `${n(facts.flowGpd)} / ${n(rate)}`,
    })
  }
  const [first, second] = areas
  if (!first) return err(notStated(perBedroom !== null ? 'needs-bedrooms' : 'needs-flow', rule.value.table))
  return ok({ value: { ...first, other: second ?? null, counts: rule.value.counts }, steps })
}

type Plain = { readonly sqFt: number; readonly formula: string; readonly numbers: string }

/** A formula that holds for some flows only, asked outside them. An unknown flow is told where it is needed. */
function flowBeyond(table: PercTable, flowGpd: number | null): NotStated | null {
  if (table.rule !== 'inverse-root' || flowGpd === null) return null
  const { fromGpd, toGpd } = table
  const outside = (fromGpd !== null && flowGpd < fromGpd) || (toGpd !== null && flowGpd > toGpd)
  return outside ? notStated('beyond-table', table.table, `${printNumber(flowGpd)} gpd`) : null
}

type Change = { readonly factor: number; readonly formula: string; readonly numbers: string }
const NONE: Change = { factor: 1, formula: '', numbers: '' }

/** What a bed, or gravel below the pipe, makes of the area. */
function changeOf(
  rule: Cited<PercTable> | Cited<TextureTable>,
  { bed, pit, gravelIn = null }: AbsorptionFacts,
): Result<Change, NotStated> {
  if (!isPerc(rule)) return ok(NONE)
  const { bedFactor, gravelCredits, table } = rule.value
  if (bed) {
    const plain = bedFactor === 1
    return ok(plain ? NONE : { factor: bedFactor, formula: ' · bed factor', numbers: ` × ${n(bedFactor)}` })
  }
  if (pit || gravelCredits.length === 0) return ok(NONE)
  if (gravelIn === null) return err(notStated('needs-gravel-depth', table))
  const credit = gravelCredits.findLast((it) => gravelIn >= it.fromIn)
  if (!credit) return ok(NONE)
  const factor = (100 - credit.pct) / 100
  return ok({ factor, formula: ` less ${n(credit.pct)} % for gravel`, numbers: ` × ${n(factor)}` })
}

const leastStep = (least: number, sqFt: number): Step => ({
  says: 'Never below the minimum',
  formula: 'max(minimum, A)',
  numbers: `max(${n(least)}, ${n(sqFt)})`,
  result: `${printNumber(least, 1)} sq ft`,
})

const n = (value: number): string => printSignificant(value, 6)
