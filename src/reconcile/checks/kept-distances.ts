import {
  type Apart,
  eachApart,
  otherToday,
  placedThings,
  today,
  whenPermitted,
} from '../facts/asked-apart.ts'
import { keptFound, keptOnRecord, partsOnRecord, partsThere } from '../facts/kept-apart.ts'
import { setbackAsking } from '../facts/setback-answer.ts'

const facet = ({ from }: Apart): string => from

/** All that a part keeps away from besides the well and the house: property line, water, lines, other systems. */
export const keptDistances = setbackAsking({
  id: 'kept-distances',
  raises: 'setback-short',
  facet,
  name: 'setbacks',
  on: whenPermitted,
  subjects: (given) => eachApart(partsOnRecord(given), ['well', 'building']),
  others: () => [],
})

/** By today's law, where it requires another distance: the house too. */
export const keptDistancesToday = setbackAsking({
  id: 'kept-distances-today',
  raises: 'setback-short',
  facet,
  name: 'setbacks',
  occasion: 'today',
  on: today,
  subjects: (given) => eachApart(partsThere(given), ['well']).filter((apart) => otherToday(apart, given)),
  others: placedThings,
})

/** A lender's own table; it asks of the well itself too. */
export const lenderDistances = setbackAsking({
  id: 'lender-distances',
  raises: 'lender-distance-short',
  facet,
  name: 'setbacks.lender',
  on: today,
  subjects: (given) => eachApart([...keptOnRecord(given), ...keptFound(given)], ['well']),
  others: placedThings,
})
