import { canonicalize } from 'json-canonicalize'
import type { LetterStatement } from '../statement.ts'

/** What the service says of a letter that no seal could: it is of the day it was asked, or of how the letter is kept. */
const OF_THE_DAY: ReadonlySet<string> = new Set([
  ...['signature', 'state', 'checkedAt', 'since', 'newer', 'withdrawn'],
  ...['id', 'issuedAt', 'code', 'pdf', 'pdfBytes', 'pages'],
])

/**
 * What a file that holds a signature says beside it and otherwise, or that nobody signed: names of its parts, none where
 * all of it fits. An altered word beside a good signature is how a letter is forged.
 */
export function saidBeside(
  file: Readonly<Record<string, unknown>>,
  statement: LetterStatement,
): readonly string[] {
  const signed: Readonly<Record<string, unknown>> = { ...statement, checkAddress: statement.check }
  return Object.entries(file).flatMap(([name, value]) => {
    if (OF_THE_DAY.has(name)) return []
    // As files of older versions have it: the whole statement once more.
    if (name === 'statement') return fits(value, statement) ? [] : ['statement']
    return name in signed && fits(value, signed[name]) ? [] : [name]
  })
}

/** Whether all that is said is signed; the id under which a parcel is kept is no part of a letter. */
function fits(said: unknown, signed: unknown): boolean {
  if (typeof said !== 'object' || said === null || typeof signed !== 'object' || signed === null)
    return said === signed
  const { id: _, ...rest } = said as Record<string, unknown>
  const whole = 'id' in signed ? said : rest
  const of = signed as Record<string, unknown>
  return Object.entries(whole).every(
    ([name, value]) => name in of && canonicalize(value) === canonicalize(of[name]),
  )
}
