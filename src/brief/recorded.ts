import { MEASURE_NAMES, SYSTEM_FIELDS } from '../catalog/catalog.ts'
import { printGal } from '../measure/print/gallons.ts'
import type { AsBuilt, AsBuiltComponent, Claim, Origin } from '../records/as-built.ts'
import type { Segments } from '../records/segments.ts'
import { fieldNoun } from '../words/fields.ts'

/** How far a line of the record can be relied on. */
export type Sureness = 'confirmed' | 'corrected' | 'unreadable' | 'contradictory'

/** One line of the record: what, what it says, how sure, and where it stands. Never an expectation. */
export type RecordedLine = {
  readonly component: string | null
  readonly what: string
  readonly says: string
  readonly sureness: Sureness
  readonly origins: readonly Origin[]
}

export function recordedLines(asBuilt: AsBuilt): readonly RecordedLine[] {
  const system = SYSTEM_FIELDS.flatMap((name) => line(null, fieldNoun('permit', name), asBuilt[name]))
  return [
    ...system,
    ...asBuilt.components.filter(({ standing }) => standing === 'in-service').flatMap(linesOf),
  ]
}

const linesOf = ({ key, measures }: AsBuiltComponent): readonly RecordedLine[] =>
  MEASURE_NAMES.flatMap((name) => line(key, fieldNoun('component', name), measures[name]))

function line(component: string | null, what: string, claim: Claim<unknown>): readonly RecordedLine[] {
  switch (claim.state) {
    case 'silent':
      return []
    case 'stated':
      return [
        {
          component,
          what,
          says: inWords(claim.value),
          sureness: claim.origin.source.kind === 'correction' ? 'corrected' : 'confirmed',
          origins: [claim.origin, ...(claim.also ?? [])],
        },
      ]
    case 'unreadable':
      return [{ component, what, says: claim.note, sureness: 'unreadable', origins: [claim.origin] }]
    case 'contradictory':
      return [
        {
          component,
          what,
          says: claim.claims
            .map(({ value, origin }) => `${inWords(value)} (permit ${origin.permit.number})`)
            .join(' or '),
          sureness: 'contradictory',
          origins: claim.claims.map(({ origin }) => origin),
        },
      ]
  }
}

/** As the paper has it where it was written down, else the plain value. */
export function inWords(value: unknown): string {
  if (Array.isArray(value)) return value.map(inWords).join('; ')
  if (typeof value !== 'object' || value === null) return String(value).replaceAll('-', ' ')
  if ('asWritten' in value) return String(value.asWritten)
  if ('gal' in value) return printGal(Number(value.gal))
  if ('a' in value && 'b' in value) {
    const { a, b, side, sideWords } = value as {
      a: unknown
      b: unknown
      side?: string | null
      sideWords?: string | null
    }
    const where =
      sideWords ?? (side === 'away' ? 'away from the house' : side === 'toward' ? 'on the house side' : null)
    return `A ${inWords(a)}, B ${inWords(b)}${where ? `, ${where}` : ', side not said'}`
  }
  if ('from' in value && 'to' in value) {
    const { from, to, material, pipeDiameter } = value as Segments[number]
    const what = [material, pipeDiameter].filter((it) => it !== null).map(inWords)
    return [`${inWords(from)} to ${inWords(to)}`, ...what].join(', ')
  }
  return JSON.stringify(value)
}
