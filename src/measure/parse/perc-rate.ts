import { ok, type Result } from '../../base/result.ts'
import { amountAt } from './amount.ts'
import { boundIn, withoutAbout } from './hedge.ts'
import { type ParseIssue, quoted, refuse } from './issue.ts'
import { FT_PER, lengthUnit } from './length-unit.ts'
import { tidy } from './tidy.ts'
import { type Token, tokens } from './tokens.ts'

/**
 * A percolation rate as someone wrote it, in minutes for the water to fall one inch (slower is more). The half step is
 * half of the last place of the number that was measured: the minutes, or of a speed the length.
 */
export type StatedPercRate = {
  readonly minPerIn: number
  readonly halfStepMinPerIn: number
  readonly asWritten: string
  readonly approximate?: true
}

const TIMES = new Map<string, number>(
  (
    [
      [1, "min mins minute minutes '"],
      [60, 'h hr hrs hour hours'],
      [1 / 60, 's sec secs second seconds'],
    ] as const
  ).flatMap(([minutes, spellings]) => spellings.split(' ').map((word) => [word, minutes] as const)),
)
const MPI = new Set(['mpi', 'minperin', 'mininch', 'minsperin'])
const JOINS = new Set(['/', 'per', 'in', 'for', 'every', 'each', 'the', 'last', 'a', 'an', ':', '='])
const LIKE = '20 min/in or 1 in in 20 min'
/** Slower than any soil that was ever tested to an end; a larger number was misread. */
const SLOWEST = 10_000

type Side = {
  readonly kind: 'time' | 'length'
  readonly size: number
  readonly half: number
  readonly stated: boolean
}

/**
 * A percolation rate in any of the ways people write one: `20 mpi`, `20 min/in`, `20 minutes per inch`,
 * `1 in in 20 min`, `1"/20 min`, `6 in in 90 min`, `3 in/hr`, `8 min/cm`. A number with no unit is refused unless
 * `bare` says it is minutes per inch.
 */
export function parsePercRate(
  text: string,
  { bare }: { readonly bare: 'min/in' | 'refuse' } = { bare: 'refuse' },
): Result<StatedPercRate, ParseIssue> {
  const plain = tidy(text)
  if (!plain.ok) return plain
  const cut = tokens(plain.value)
  if (!cut.ok) return cut
  const { list, about } = withoutAbout(cut.value)
  const bound = boundIn(list, 'min')
  if (bound !== undefined)
    return refuse(`${quoted(text)} is a bound ("${bound}") and not a rate: write the rate that was measured`)
  const rate = rangeOf(list, text) ?? shortForm(list, bare, text) ?? longForm(list, text)
  if (!rate.ok) return rate
  const { minPerIn, halfStepMinPerIn } = rate.value
  if (!(minPerIn > 0)) return refuse(`${quoted(text)}: a percolation rate is more than zero minutes per inch`)
  if (minPerIn > SLOWEST)
    return refuse(`${quoted(text)} is slower than any soil: check the number and the unit`)
  return ok({ minPerIn, halfStepMinPerIn, asWritten: text, ...(about ? { approximate: true } : {}) })
}

type Rate = Result<{ readonly minPerIn: number; readonly halfStepMinPerIn: number }, ParseIssue>

/** `5-10 mpi`: a bracket of a table and not what was measured. */
function rangeOf(list: readonly Token[], text: string): Rate | undefined {
  const [from, dash, to] = list
  if (from?.kind !== 'number' || to?.kind !== 'number' || dash?.text !== '-' || list[3]?.text === '/')
    return undefined
  const ends = [`${from.text} min/in`, `${to.text} min/in`]
  return refuse(`${quoted(text)} is a range: write the rate that was measured`, ends)
}

/** `20 mpi`, or `20` alone where that is allowed; undefined for anything longer. */
function shortForm(list: readonly Token[], bare: 'min/in' | 'refuse', text: string): Rate | undefined {
  const amount = amountAt(list, 0)
  if (!amount?.ok) return undefined
  const { value, halfStep, next } = amount.value
  const [unit] = list.slice(next)
  if (next === list.length) {
    if (bare === 'min/in') return ok({ minPerIn: value, halfStepMinPerIn: halfStep })
    return refuse(`${quoted(text)} has no unit: write it like ${LIKE}`, [`${amount.value.text} min/in`])
  }
  const named = next === list.length - 1 && unit?.kind === 'word' && MPI.has(unit.text.toLowerCase())
  return named ? ok({ minPerIn: value, halfStepMinPerIn: halfStep }) : undefined
}

/** A time and a length, in either order; the one with no number of its own is one (`20 min/in`). */
function longForm(list: readonly Token[], text: string): Rate {
  const first = sideAt(list, 0)
  if (!first?.ok) return first ?? notARate(text)
  let at = first.value.next
  while (at < list.length && JOINS.has(list[at]!.text.toLowerCase()) && joinsHere(list, at)) at += 1
  const second = sideAt(list, at)
  if (!second && first.value.side.kind === 'time' && first.value.next === list.length)
    return refuse(`${quoted(text)} is a time: write how far the water fell in it, like ${LIKE}`, [
      `${text.trim()}/in`,
    ])
  if (!second?.ok) return second ?? notARate(text)
  if (second.value.next < list.length || at === first.value.next) return notARate(text)
  const [a, b] = [first.value.side, second.value.side]
  if (a.kind === b.kind || !a.stated) return notARate(text)
  const [time, length] = a.kind === 'time' ? [a, b] : [b, a]
  if (length.size === 0) return refuse(`${quoted(text)}: the water fell no distance; write how far it fell`)
  const minPerIn = time.size / length.size
  // The half step of the measured side; the other ("1 in", "6 in") was chosen, not measured, unless it is a speed.
  const measured = time.stated && time.half > 0 ? time : length
  const share = measured.size === 0 ? 0 : measured.half / measured.size
  return ok({ minPerIn, halfStepMinPerIn: minPerIn * share })
}

/** "in" joins only where it is not itself the unit that ends the text: `20 min in` has no second quantity. */
const joinsHere = (list: readonly Token[], at: number): boolean =>
  list[at]!.text.toLowerCase() !== 'in' || at < list.length - 1

function sideAt(
  list: readonly Token[],
  at: number,
): Result<{ readonly side: Side; readonly next: number }, ParseIssue> | undefined {
  const amount = amountAt(list, at)
  if (amount && !amount.ok) return amount
  const unitAt = amount?.value.next ?? at
  const token = list[unitAt]
  if (!token || token.kind === 'number') return undefined
  const { value, halfStep } = amount?.value ?? { value: 1, halfStep: 0 }
  const stated = amount !== undefined
  const minutes = TIMES.get(token.text.toLowerCase())
  if (minutes !== undefined)
    return ok({
      side: { kind: 'time', size: value * minutes, half: halfStep * minutes, stated },
      next: unitAt + 1,
    })
  const unit = lengthUnit(token)
  if (unit === undefined) return undefined
  const inches = FT_PER[unit] * 12
  return ok({
    side: { kind: 'length', size: value * inches, half: halfStep * inches, stated },
    next: unitAt + 1,
  })
}

const notARate = (text: string): Result<never, ParseIssue> =>
  refuse(`${quoted(text)} is not a percolation rate: write it like ${LIKE}`)
