import { firstDay, lastDay } from '../../base/partial-date.ts'
import { daysBetween, type PlainDate } from '../../base/plain-date.ts'
import { printNumber } from '../../measure/print/number.ts'
import type { Step } from '../../measure/step.ts'
import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { aboutSeen } from '../about.ts'
import type { Case } from '../case.ts'
import { exactly, type Quantity } from '../quantity.ts'
import { foundCapacity } from './capacity.ts'

type Refill = {
  /** Gallons between the liquid and the outlet. */
  readonly missing: Quantity
  readonly inflow: Quantity | null
  readonly vacant: boolean
  readonly comes: 'leaks' | 'refilling' | 'read-again'
  readonly working: readonly Step[]
}

/** Depth of liquid and capacity that are usual where neither is known: 4 ft and 1,000 gal (common practice). */
const USUAL = { depthFt: 4, gal: 1000 }

/** Households use from half to twice the usual amount (common practice); an answer has to hold for either. */
const SPREAD = 2

/**
 * Whether what flowed in since the tank was pumped empty is what stands in it. Inflow = days · people · gpd per person, and
 * holds = capacity · (1 − depth below the outlet ÷ liquid depth), gallons. A tank that holds at least what flowed in is
 * refilling; one that holds less than half of it, or that half of it would have filled, leaks. An empty house sends nothing:
 * evaporation and a slow seep look alike, so the tank is filled with water and read again, as wherever nobody knows when it
 * was pumped or who lives there. A house that somebody lives in sends at least what one person does.
 */
export function refill(
  found: FoundComponent,
  given: Case,
  belowFt: number,
  gpdPerPerson: number | null,
): Refill {
  const record = given.findings!.record
  const built = given.pairings.find((pairing) => pairing.found === found)?.built
  const capacity = foundCapacity(found, '', aboutSeen(found, given))
  const gal =
    capacity.state === 'known'
      ? capacity.value.gal.value
      : ((built ? statedValue(built.measures.capacity)?.gal : null) ?? USUAL.gal)
  const depth =
    found.liquidDepth?.ft ?? (built ? statedValue(built.measures.liquidDepth)?.ft : null) ?? USUAL.depthFt
  const missing = Math.min(gal, (gal * belowFt) / depth)
  const vacant = record.occupancy === 'vacant' || (record.daysVacant ?? 0) > 0 || record.people === 0
  const pumped = record.lastPumpedOn
  const livedSince = (day: PlainDate): number =>
    Math.max(0, Math.max(0, daysBetween(day, record.inspectedOn)) - (record.daysVacant ?? 0))
  // Pumped in a month or a year that is known, and no day: what came in is at least what came since its last day.
  const lived = pumped === null ? null : livedSince(lastDay(pumped))
  const longest = pumped === null ? null : livedSince(firstDay(pumped))
  const people = vacant && record.daysVacant === null ? 0 : record.people
  const inflow =
    lived === null || people === null || gpdPerPerson === null ? null : lived * people * gpdPerPerson
  const holds = gal - missing
  const answer = (comes: Refill['comes'], numbers: string): Refill => ({
    missing: exactly(missing, 'gal'),
    inflow: inflow === null ? null : exactly(inflow, 'gal'),
    vacant,
    comes,
    working: [
      {
        says: 'Could it have refilled since it was pumped?',
        formula: 'days · people · gpd per person against capacity · (1 − depth below outlet ÷ liquid depth)',
        numbers,
        result: {
          leaks: 'more flowed in than it holds',
          refilling: 'it holds what flowed in',
          'read-again': 'cannot tell',
        }[comes],
      },
    ],
  })
  const held = `it holds ${printNumber(holds)} of ${printNumber(gal)} gal`
  if (inflow !== null) {
    const most = longest! * people! * gpdPerPerson!
    const days = longest === lived ? `${lived}` : `${lived} to ${longest}`
    const gallons = most === inflow ? printNumber(inflow) : `${printNumber(inflow)} to ${printNumber(most)}`
    const numbers = `${days} × ${people} × ${gpdPerPerson} = ${gallons} gal; ${held}`
    if (most <= holds) return answer('refilling', numbers)
    const leaks = !vacant && (holds < inflow / SPREAD || inflow / SPREAD >= gal)
    return answer(leaks ? 'leaks' : 'read-again', numbers)
  }
  if (vacant || record.occupancy !== 'occupied')
    return answer('read-again', `who lives there is not known; ${held}`)
  if (lived === null) return answer('leaks', `lived in, and no pumping known; ${held}`)
  const atLeast = lived * (gpdPerPerson ?? 0)
  const leaks = atLeast / SPREAD >= gal
  return answer(leaks ? 'leaks' : 'read-again', `at least ${lived} × 1 × ${gpdPerPerson}; ${held}`)
}
