import { err, ok, type Result } from '../../base/result.ts'
import { printNumber, printSignificant } from '../../measure/print/number.ts'
import type { Step, Worked } from '../../measure/step.ts'
import { type Cited, citedInWords } from '../citation.ts'
import type { Burden, CapacityRule, FlowPiece } from '../values/capacity-rule.ts'
import type { DesignFlow } from '../values/design-flow.ts'
import { flowFromBedrooms } from './design-flow.ts'
import { type NotStated, notStated } from './not-stated.ts'

/** What is known of the house. A null is not known; a rule that needs it says so. */
export type Household = {
  readonly bedrooms: number | null
  readonly flowGpd: number | null
  readonly burdens?: readonly Burden[]
}

type Answer = Result<Worked<number>, NotStated>

/** Minimum liquid capacity, US gallons, with the row or the piece of formula that gave it and its source. */
export function requiredCapacity(rule: Cited<CapacityRule>, house: Household): Answer {
  const answer = capacity(rule.value, house)
  if (!answer.ok) return answer
  const source: Step = {
    says: 'Minimum capacity required',
    formula: rule.value.table,
    numbers: citedInWords(rule),
    result: gal(answer.value.value),
  }
  return ok({ value: answer.value.value, steps: [...answer.value.steps, source] })
}

function capacity(rule: CapacityRule, house: Household): Answer {
  const there = rule.adjustments.filter(({ when }) => when.some((it) => house.burdens?.includes(it)))
  const extra = there.find((it) => !('addGal' in it))
  if (extra && 'rule' in extra) return capacity(extra.rule, house)
  const plain =
    rule.by === 'bedrooms'
      ? byBedrooms(rule, house)
      : rule.by === 'flow'
        ? byFlow(rule, house)
        : largest(rule, house)
  if (!plain.ok) return plain
  const burdened =
    extra && 'factor' in extra ? withFactor(extra.factor, extra.when, plain.value) : plain.value
  const least = atLeast(rule.minimumGal, burdened)
  return ok(there.reduce((sum, it) => ('addGal' in it ? withMore(it.addGal, it.when, sum) : sum), least))
}

function byBedrooms(rule: CapacityRule & { by: 'bedrooms' }, house: Household): Answer {
  const { bedrooms } = house
  if (bedrooms === null || !Number.isInteger(bedrooms) || bedrooms < 0)
    return err(notStated('needs-bedrooms', rule.table))
  const row = rule.rows.find((it) => it.bedrooms >= bedrooms)
  if (row) {
    const numbers = `${bedrooms} ${bedrooms === 1 ? 'bedroom' : 'bedrooms'}: row ${row.bedrooms}`
    return table(row.gal, `${rule.table}, row for the bedroom count`, numbers)
  }
  const last = rule.rows.at(-1)!
  const { more } = rule
  switch (more.rule) {
    case 'open-top':
      return table(
        last.gal,
        `${rule.table}, last row holds for more`,
        `${bedrooms} bedrooms: row ${last.bedrooms} and more`,
      )
    case 'add-per-bedroom': {
      const extra = bedrooms - last.bedrooms
      const value = last.gal + extra * more.gal
      return ok({
        value,
        steps: [
          {
            says: `${rule.table}, last row and so much for each bedroom more`,
            formula: 'V = last row + extra bedrooms · addition',
            numbers: `${printNumber(last.gal)} + ${extra} × ${printNumber(more.gal)}`,
            result: gal(value),
          },
        ],
      })
    }
    case 'by-flow':
      return alongPieces(rule.table, more.flow, more.pieces, house)
    case 'not-stated':
      return err(notStated('beyond-table', rule.table, `${bedrooms} bedrooms`))
  }
}

const table = (value: number, says: string, numbers: string): Answer =>
  ok({ value, steps: [{ says, formula: 'V = the row', numbers, result: gal(value) }] })

const byFlow = (rule: CapacityRule & { by: 'flow' }, house: Household): Answer =>
  alongPieces(rule.table, rule.flow, rule.pieces, house)

/** A stated flow goes before one worked out from bedrooms. */
function alongPieces(
  name: string,
  flow: DesignFlow | null,
  pieces: readonly FlowPiece[],
  house: Household,
): Answer {
  const fromBedrooms = flow && house.bedrooms !== null ? flowFromBedrooms(flow, house.bedrooms) : null
  const q = house.flowGpd ?? fromBedrooms
  if (q === null || !(q >= 0)) return err(notStated('needs-flow', name))
  const i = pieces.findIndex(
    (it) => (it.upTo === null || q <= it.upTo) && (it.below === null || q < it.below),
  )
  const piece = pieces[i]
  if (!piece) return err(notStated('beyond-table', name, `${printNumber(q)} gpd`))
  const value = piece.times * (q - piece.after) + piece.plus
  const flowStep: readonly Step[] =
    house.flowGpd === null && flow
      ? [
          {
            says: 'Design flow from the bedroom count',
            formula: `Q = base + per bedroom · max(0, bedrooms − ${flow.coversBedrooms})`,
            numbers: `${flow.baseGpd} + ${flow.perBedroomGpd} × max(0, ${house.bedrooms} − ${flow.coversBedrooms})`,
            result: `${printNumber(q)} gpd`,
          },
        ]
      : []
  return ok({
    value,
    steps: [
      ...flowStep,
      {
        says: `${name}, the piece for ${pieceInWords(pieces, i)}`,
        formula: `V = ${expression(piece, 'Q')}`,
        numbers: expression(piece, n(q)),
        result: gal(value),
      },
    ],
  })
}

function pieceInWords(pieces: readonly FlowPiece[], i: number): string {
  const [before, it] = [pieces[i - 1], pieces[i]!]
  const low = before ? (before.upTo !== null ? `${n(before.upTo)} < ` : `${n(before.below!)} ≤ `) : ''
  const high = it.upTo !== null ? ` ≤ ${n(it.upTo)}` : it.below !== null ? ` < ${n(it.below)}` : ''
  return `${low}Q${high} gpd`
}

/** `1.5·(Q − 500) + 1,250` with Q or its number in place; a plain row of a table is its figure alone. */
function expression({ times, after, plus }: FlowPiece, q: string): string {
  if (times === 0) return n(plus)
  const sign = q === 'Q' ? '·' : ' × '
  return `${n(times)}${sign}${after === 0 ? q : `(${q} − ${n(after)})`}${plus === 0 ? '' : ` + ${n(plus)}`}`
}

/** Of several rules the largest that can be answered; one that can't be answered leaves the whole unanswered. */
function largest(rule: CapacityRule & { by: 'largest-of' }, house: Household): Answer {
  const answers: Worked<number>[] = []
  for (const part of rule.rules) {
    const answer = capacity(part, house)
    if (!answer.ok) return answer
    answers.push(answer.value)
  }
  const value = Math.max(...answers.map((it) => it.value))
  const numbers = answers.map((it) => n(it.value)).join(', ')
  const last: Step = { says: rule.table, formula: 'V = the largest of', numbers, result: gal(value) }
  return ok({ value, steps: [...answers.flatMap((it) => it.steps), last] })
}

const withFactor = (factor: number, when: readonly Burden[], plain: Worked<number>): Worked<number> =>
  burdenedWith(when, plain, plain.value * factor, 'V · factor', `${n(plain.value)} × ${n(factor)}`)

const withMore = (more: number, when: readonly Burden[], plain: Worked<number>): Worked<number> =>
  burdenedWith(when, plain, plain.value + more, 'V + addition', `${n(plain.value)} + ${n(more)}`)

function burdenedWith(
  when: readonly Burden[],
  plain: Worked<number>,
  value: number,
  formula: string,
  numbers: string,
): Worked<number> {
  const says = `With ${when.join(' or ').replaceAll('-', ' ')}`
  return { value, steps: [...plain.steps, { says, formula, numbers, result: gal(value) }] }
}

function atLeast(minimum: number, plain: Worked<number>): Worked<number> {
  if (plain.value >= minimum) return plain
  const numbers = `max(${n(minimum)}, ${n(plain.value)})`
  const step: Step = {
    says: 'Never below the minimum',
    formula: 'max(minimum, V)',
    numbers,
    result: gal(minimum),
  }
  return { value: minimum, steps: [...plain.steps, step] }
}

const n = (value: number): string => printSignificant(value, 8)
const gal = (value: number): string => `${printSignificant(value, 8)} gal`
