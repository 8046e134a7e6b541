import type { Occasion } from '../reconcile/asked-of-code.ts'
import type { ReasonOf } from '../reconcile/reason.ts'
import type { Existing } from '../rules/values/requirement.ts'
import { figure } from './quantity.ts'
import { sourceNote } from './rules.ts'
import { counted } from './sentence.ts'
import { CONSTRUCTION_NOUNS } from './things.ts'

/** What a code asks of how a thing is built, as a clause. */
export const requires = (occasion: Occasion): string =>
  occasion === 'today' ? 'today’s code requires' : 'the code when it was permitted required'

/** `at least 6 in`, `25% to 40%`. */
function band({ low, high }: Pick<ReasonOf<'construction'>, 'low' | 'high'>): string {
  if (low && high) return `${figure(low)} to ${figure(high)}`
  return low ? `at least ${figure(low)}` : high ? `at most ${figure(high)}` : 'another'
}

export const constructionWords = (
  name: string,
  { construction, occasion, found, low, high, source, comes }: ReasonOf<'construction'>,
): string =>
  `${name}: ${CONSTRUCTION_NOUNS[construction]} ${figure(found)}; ${requires(occasion)} ${band({ low, high })}${sourceNote(source)}${comes === 'too-close' ? ': too close to call' : ''}`

export function compartmentsWords({
  occasion,
  count,
  minimum,
  first,
  source,
  comes,
}: ReasonOf<'compartments'>): string {
  const has = `the tank has ${counted(count, 'compartment')}; ${requires(occasion)} at least ${minimum}${sourceNote(source)}`
  if (first)
    return `${has}; the first is ${figure(first.found)} of the length, where ${requires(occasion)} ${band(first)}`
  return comes === 'too-close' ? `${has}, or more: the bedrooms or the size are not known` : has
}

export function requiredPartWords(
  name: string,
  { occasion, required, there, detail, source }: ReasonOf<'required-part'>,
): string {
  const is = there ? `${name} is there` : `${name} is not there`
  if (!required)
    return `${is}; ${occasion === 'today' ? 'today’s code requires none' : 'the code when it was permitted required none'}${sourceNote(source)}`
  return `${is}; ${requires(occasion)} one${detail ? ` (${detail})` : ''}${sourceNote(source)}`
}

const TYPES = {
  cesspool: 'a cesspool',
  privy: 'a privy',
  'masonry-tank': 'a tank of block, brick or stone',
} as const

const EXISTING: { readonly [E in Existing]: string } = {
  'until-it-fails': 'one that is there may stay until it fails',
  'replace-at-transfer': 'one that is there must be replaced when the property changes hands',
  hazard: 'one that is there is a hazard by itself',
}

export function acceptedWords(
  name: string,
  { type, occasion, accepted, detail, existing, source }: ReasonOf<'accepted'>,
): string {
  const code = occasion === 'today' ? 'today’s code' : 'the code when it was permitted'
  const does = accepted
    ? occasion === 'today'
      ? 'accepts'
      : 'accepted'
    : occasion === 'today'
      ? 'does not accept'
      : 'did not accept'
  const then = accepted || existing === null ? '' : `; ${EXISTING[existing]}`
  return `${name}: ${code} ${does} ${TYPES[type]}${detail ? ` (${detail})` : ''}${sourceNote(source)}${then}`
}

export const pumpingIntervalWords = ({
  since,
  years,
  people,
  source,
  due,
}: ReasonOf<'pumping-interval'>): string =>
  `the tank was last pumped ${figure(since)} ago; for its size and ${counted(people, 'person', 'people')}, every ${figure(years)} is advised${sourceNote(source)}${due ? '' : ': not due'}`
