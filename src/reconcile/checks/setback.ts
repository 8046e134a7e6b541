import { eachOf, otherToday, placedThings, today, whenPermitted } from '../facts/asked-apart.ts'
import { partsOnRecord, partsThere, wellsFound, wellsOnRecord, wellsThere } from '../facts/kept-apart.ts'
import { setbackAsking } from '../facts/setback-answer.ts'

/** The tape of an inspection is to the well on record, where there is one; else to the one that was found. */
const toRecorded = {
  isTaped: (_: unknown, given: Parameters<typeof wellsFound>[0]) =>
    wellsOnRecord(given).length > 0 || wellsFound(given).length === 0,
}

/** The well, by the law of the permit's day. */
export const setback = setbackAsking({
  id: 'setback',
  raises: 'setback-short',
  facet: () => null,
  name: 'setbacks',
  on: whenPermitted,
  subjects: (given) => eachOf(partsOnRecord(given), 'well'),
  others: placedThings,
  ...toRecorded,
})

/** Today's law, where it requires another distance; of a part that no permit shows, the only one there is. */
export const setbackToday = setbackAsking({
  id: 'setback-today',
  raises: 'setback-short',
  facet: () => 'today',
  name: 'setbacks',
  occasion: 'today',
  on: today,
  subjects: (given) => eachOf(partsThere(given), 'well').filter((apart) => otherToday(apart, given)),
  others: placedThings,
  ...toRecorded,
})

/** The wall that the ties run from is a wall of the building; its other walls lie behind it. */
export const buildingSetback = setbackAsking({
  id: 'building-setback',
  raises: 'setback-short',
  facet: () => null,
  name: 'setbacks',
  on: whenPermitted,
  subjects: (given) => eachOf(partsOnRecord(given), 'building'),
  others: placedThings,
})

/** A well that no permit shows was drilled since: it has to keep today's distance from what was there before it. */
export const wellSince = setbackAsking({
  id: 'well-since',
  raises: 'setback-short',
  facet: () => 'a well drilled since',
  name: 'setbacks',
  on: today,
  subjects: (given) => (wellsFound(given).length > 0 ? eachOf(partsThere(given), 'well') : []),
  others: (apart, given) => placedThings(apart, given, wellsFound),
  isTaped: (_, given) => wellsOnRecord(given).length === 0,
})

/** A lender's program asks by its own table, on the day of the question; what the county accepts it may not. */
export const lenderSetback = setbackAsking({
  id: 'lender-setback',
  raises: 'lender-distance-short',
  facet: () => null,
  name: 'setbacks.lender',
  on: today,
  subjects: (given) => eachOf(partsThere(given), 'well'),
  others: (apart, given) => placedThings(apart, given, wellsThere),
})
