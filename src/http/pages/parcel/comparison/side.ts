import { inWords } from '../../../../brief/recorded.ts'
import type { MeasureName } from '../../../../catalog/catalog.ts'
import { METHODS } from '../../../../measure/methods.ts'
import { printNumber } from '../../../../measure/print/number.ts'
import type { AsBuiltComponent, Claim, Origin } from '../../../../records/as-built.ts'
import type { FoundComponent } from '../../../../records/findings.ts'
import type { FoundLength } from '../../../../records/quantity.ts'

/** What one of the two, the record or the inspection, says on a line. */
export type Side = {
  readonly text: string
  /** `doubtful`: it is on a permit and cannot be read, or the permits contradict each other. */
  readonly state: 'said' | 'silent' | 'doubtful'
  /** The papers that say so. */
  readonly origins: readonly Origin[]
  /** How it was taken in the field, each reading in words. */
  readonly taken: readonly string[]
}

export const silent = (text: string): Side => ({ text, state: 'silent', origins: [], taken: [] })
export const said = (text: string, taken: readonly string[] = []): Side => ({
  text,
  state: 'said',
  origins: [],
  taken,
})

type Print = (value: unknown) => string

/** What the record says of one thing. */
export function claimSide(claim: Claim<unknown>, print: Print = inWords): Side {
  switch (claim.state) {
    case 'silent':
      return silent('not on record')
    case 'stated':
      return {
        text: print(claim.value),
        state: 'said',
        origins: [claim.origin, ...(claim.also ?? [])],
        taken: [],
      }
    case 'unreadable':
      return {
        text: `cannot be read: ${claim.note}`,
        state: 'doubtful',
        origins: [claim.origin],
        taken: [],
      }
    case 'contradictory':
      return {
        text: claim.claims
          .map(({ value, origin }) => `${print(value)} (permit ${origin.permit.number})`)
          .join(' or '),
        state: 'doubtful',
        origins: claim.claims.map(({ origin }) => origin),
        taken: [],
      }
  }
}

/** Several measures as one side: what is not on record is left out, unless none is. */
export const recordSide = ({ measures }: AsBuiltComponent, names: readonly MeasureName[]): Side =>
  together(
    names.map((name) => claimSide(measures[name], printOf(name))),
    'not on record',
  )

/** The same as the inspection found it; an inspection that did not see the thing measured nothing of it. */
export function foundSide(found: FoundComponent | null, names: readonly MeasureName[]): Side {
  if (found === null) return silent('')
  return together(
    names.map((name) => measureSide(name, (found as Partial<Record<MeasureName, unknown>>)[name])),
    found.outcome === 'found' ? 'not measured' : '',
  )
}

function measureSide(name: MeasureName, value: unknown): Side {
  if (value === null || value === undefined) return silent('')
  return said(printOf(name)(value), howTaken(value))
}

/** A count is nothing without what was counted. */
function printOf(name: MeasureName): Print {
  if (name === 'compartments') return (count) => `${count} compartment${count === 1 ? '' : 's'}`
  if (name === 'area') return (sqFt) => `${printNumber(Number(sqFt))} sq ft`
  if (name === 'count') return (count) => `${count} alike`
  if (name === 'measuredFrom') return (from) => `distances from the ${inWords(from)}`
  return inWords
}

function howTaken(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return ['seen by the inspector']
  if (Array.isArray(value))
    return [
      ...new Set(
        value.flatMap(({ from, to }) => [from, to].map((it) => METHODS[(it as FoundLength).method].says)),
      ),
    ]
  if ('method' in value) return [reading(value as FoundLength)]
  if ('a' in value && 'b' in value) {
    const { a, b } = value as { readonly a: FoundLength; readonly b: FoundLength }
    return [`A: ${reading(a)}`, `B: ${reading(b)}`]
  }
  return []
}

export const reading = ({ asWritten, method, instrument }: FoundLength): string =>
  `${asWritten}: ${METHODS[method].says}${instrument === method ? '' : ` (${instrument})`}`

function together(sides: readonly Side[], none: string): Side {
  const speaking = sides.filter(({ state }) => state !== 'silent')
  if (speaking.length === 0) return silent(none)
  return {
    text: speaking.map(({ text }) => text).join(', '),
    state: speaking.some(({ state }) => state === 'doubtful') ? 'doubtful' : 'said',
    origins: speaking.flatMap(({ origins }) => origins),
    taken: [...new Set(speaking.flatMap(({ taken }) => taken))],
  }
}
