import { parseLength } from '../../measure/parse/length.ts'
import { parseVolume } from '../../measure/parse/volume.ts'
import type { Box } from '../../records/source.ts'
import type { Ask } from '../asks.ts'
import { parsePartialDate } from '../date.ts'
import type { Doubt, FoundHow } from '../proposal.ts'
import type { Statement } from '../statement.ts'

export type Chosen = {
  readonly statement: Statement
  readonly confidence: number
  readonly doubts: readonly Doubt[]
}

/** A tick is a decision, a label a question answered; running text mentions things in passing. */
const TRUST: Record<FoundHow, number> = { family: 1, tick: 1, table: 0.99, label: 0.99, prose: 0.98 }

/** A second reader who sees the same is worth much, one who sees another thing costs much. */
export const SECOND = { same: 1, nothing: 0.85, other: 0.65, unasked: 1 } as const

/** Words that no list or figure checks: at a taught place and read by one reader alone they are misspelled more often than not. */
const IN_WORDS = new Set<Ask>(['address', 'soilTexture', 'cornerA', 'cornerB', 'remarks'])

/**
 * How sure the readers are of the signs. Two who see the same err only where both do; but they look at one strip, and what
 * misleads the one misleads the other, so the second's word lifts less than its own sureness would.
 */
const seen = ({ excerpt, second }: Statement): number =>
  second?.says === 'same' ? 1 - (1 - excerpt.confidence) * Math.sqrt(1 - second.sure) : excerpt.confidence

/** How well it is told what the words mean, and how surely they were read. */
const meant = ({ fit, how }: Statement): number => fit * TRUST[how]
const read = (statement: Statement): number => {
  const { ask, how, second } = statement
  const inWords = how === 'family' && IN_WORDS.has(ask) && second && second.says !== 'same'
  return seen(statement) * SECOND[second?.says ?? 'unasked'] * (inWords ? 0.5 : 1)
}
const weight = (statement: Statement): number => meant(statement) * read(statement)

/** The best of several statements of one thing; another value on the paper is kept as a doubt. */
export function choose(statements: readonly Statement[]): Chosen | undefined {
  const sorted = [...statements].sort((a, b) => weight(b) - weight(a))
  const [statement, ...others] = sorted
  if (!statement) return undefined
  const same = others.filter(({ value }) => sameValue(value, statement.value))
  const rivals = others.filter(
    (other) => !sameValue(other.value, statement.value) && weight(other) > 0.6 * weight(statement),
  )
  const confidence = rivals.length > 0 ? weight(statement) * 0.75 : togetherWith(statement, same)
  const doubts: Doubt[] = statement.doubts.filter((doubt) => !same.some((other) => lifts(other, doubt)))
  if (rivals.length > 0)
    doubts.push({
      kind: 'other-value-on-paper',
      says: `the paper also gives ${[...new Set(rivals.map(({ excerpt }) => `"${excerpt.words}"`))].join(', ')}`,
      readings: [...new Set(rivals.map(({ value }) => value))],
    })
  if (statement.second?.says === 'other')
    doubts.push({
      kind: 'readers-differ',
      says: `a second reader saw "${statement.second.value}"`,
      readings: [statement.second.value],
    })
  return { statement, confidence: Math.min(0.999, confidence), doubts }
}

/** A place that a form was taught knows the unit that goes without saying there, and what the value is of. */
const SURE_PLACE = 0.85
const lifts = ({ how, fit, doubts }: Statement, { kind }: Doubt): boolean =>
  how === 'family' &&
  fit > SURE_PLACE &&
  (kind === 'unit-assumed' || kind === 'belongs-unclear') &&
  !doubts.some((own) => own.kind === kind)

/** What the same words told twice are worth at the most, where their signs alone would not be worth it: never a mark. */
const TOLD_TWICE = 0.85

/**
 * The same told twice is believed more. Told of the same words by a label and by a place, it is more certainly meant but no
 * more certainly read; only where the paper says it at two places is it both.
 */
function togetherWith(statement: Statement, same: readonly Statement[]): number {
  if (same.length === 0) return weight(statement)
  const half = (doubt: number): number => 1 - (1 - doubt) * 0.5
  const isElsewhere = same.some(({ excerpt }) => !overlaps(excerpt.box, statement.excerpt.box))
  const lifted = half(weight(statement))
  return isElsewhere
    ? lifted
    : Math.max(half(meant(statement)) * read(statement), Math.min(lifted, TOLD_TWICE))
}

const overlaps = (a: Box, b: Box): boolean =>
  Math.min(a.x + a.w, b.x + b.w) > Math.max(a.x, b.x) && Math.min(a.y + a.h, b.y + b.h) > Math.max(a.y, b.y)

/** Two writings of one value: the same words, or the same length, volume or day. */
export function sameValue(a: string | number, b: string | number): boolean {
  if (a === b) return true
  if (typeof a === 'number' || typeof b === 'number') return false
  if (plain(a) === plain(b)) return true
  const [la, lb] = [parseLength(a), parseLength(b)]
  if (la.ok && lb.ok) return Math.abs(la.value.ft - lb.value.ft) < 1e-6
  const [va, vb] = [parseVolume(a), parseVolume(b)]
  if (va.ok && vb.ok) return Math.abs(va.value.gal - vb.value.gal) < 1e-6
  const [da, db] = [parsePartialDate(a), parsePartialDate(b)]
  return da.ok && db.ok && da.value === db.value
}

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '')
