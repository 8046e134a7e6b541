import { type Days, daysOf, type PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { RuleBook } from './book.ts'
import { type InForce, inForce } from './in-force.ts'
import type { PlaceId } from './pack.ts'
import type { ParameterName } from './parameters.ts'

/** The rule changed within the days that are meant, so the missing part of the date decides. */
export type DayUnclear = {
  readonly state: 'day-unclear'
  readonly first: PlainDate
  readonly last: PlainDate
}

/**
 * What a place goes by on a day that may be known to the month or the year alone: the answer of every one of those days,
 * where they have one. Asked on the first of them and on each day within on which an entry of that rule begins or ends.
 */
export function inForceThroughout<Name extends ParameterName>(
  book: RuleBook,
  place: PlaceId,
  name: Name,
  when: PartialDate | Days,
): InForce<Name> | DayUnclear {
  const { first, last } = typeof when === 'string' ? daysOf(when) : when
  const answer = inForce(book, place, name, first)
  if (first === last) return answer
  const turns = (book.places.get(place)?.standings.get(name) ?? [])
    .flatMap(({ during }) => [during.from, during.until])
    .filter((day): day is PlainDate => day !== null && day > first && day <= last)
  const same = turns.every((day) => wordOf(inForce(book, place, name, day)) === wordOf(answer))
  return same ? answer : { state: 'day-unclear', first, last }
}

/** Two answers are one when they say the same by the same words of law. */
const wordOf = (answer: InForce<ParameterName>): string =>
  answer.state === 'in-force' ? JSON.stringify([answer.pack, answer.value, answer.citations]) : answer.state
