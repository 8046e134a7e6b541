import { firstDay, lastDay } from '../base/partial-date.ts'
import { addDays, addYears, type PlainDate } from '../base/plain-date.ts'
import { countsUntil } from '../rules/apply/transfer-window.ts'
import { inForce } from '../rules/in-force.ts'
import type { ReconcileInput } from './case.ts'

/**
 * The last day on which a reconciliation made on `asOf` still holds when nothing but time passes; null where time
 * alone changes nothing that can be foreseen. Time speaks through three things: an inspection's window runs out, a metal tank
 * reaches an age, and one rule takes the place of another. Too early a day costs a run; too late would be a wrong answer,
 * so every candidate counts whether or not it would change anything.
 */
export function goodUntil(input: ReconcileInput): PlainDate | null {
  const { asOf } = input
  const turns = [...windowEnds(input), ...ages(input), ...ruleTurns(input)].filter((day) => day > asOf)
  const [first] = turns.sort()
  return first === undefined ? null : addDays(first, -1)
}

/** The first day on which the inspection no longer counts for a transfer. */
function windowEnds({ book, county, asOf, findings }: ReconcileInput): PlainDate[] {
  const window = inForce(book, county, 'transfer.inspection-window-days', asOf)
  if (!findings || window.state !== 'in-force') return []
  return [false, true]
    .map((pumpedYearly) => countsUntil(window.value, findings.record.inspectedOn, pumpedYearly))
    .flatMap((last) => (last === null ? [] : [addDays(last, 1)]))
}

/** The first day on which a tank of that permit is older than the rule allows, whatever it is made of. */
function ages({ book, county, asOf, permits }: ReconcileInput): PlainDate[] {
  const limit = inForce(book, county, 'tank.metal-age-limit-years', asOf)
  if (limit.state !== 'in-force') return []
  return permits.flatMap(({ record }) =>
    [record.issuedOn, record.approvedOn].flatMap((day) =>
      day === null
        ? []
        : [firstDay(day), lastDay(day)].map((end) => addDays(addYears(end, limit.value.amount), 1)),
    ),
  )
}

function ruleTurns({ book, county }: ReconcileInput): PlainDate[] {
  const standings = book.places.get(county)?.standings
  return [...(standings?.values() ?? [])]
    .flat()
    .flatMap(({ during }) => [during.from, during.until])
    .filter((day) => day !== null)
}
