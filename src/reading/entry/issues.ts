import type { z } from 'zod'
import { nearestName } from './nearest-name.ts'

/** What a fault is where a form asks in its own words: nothing there, none of the choices, a tie from no corners, an odd value. */
export const ISSUE_KINDS = ['nothing', 'choice', 'no-corners', 'unusual'] as const
export type IssueKind = (typeof ISSUE_KINDS)[number]

/** One fault of an entry: an RFC 6901 JSON Pointer to the value, and what is wrong with it and what to do. */
export type EntryIssue = {
  readonly pointer: string
  readonly message: string
  readonly kind?: IssueKind
  /** Of an odd value: the question, and what was written, for a box to tick. */
  readonly asked?: { readonly asks: string; readonly written: string }
}

type Issue = z.core.$ZodIssue
const escaped = (key: PropertyKey): string => String(key).replaceAll('~', '~0').replaceAll('/', '~1')
export const pointerOf = (path: readonly PropertyKey[]): string =>
  path.map((key) => `/${escaped(key)}`).join('')

/**
 * Every fault that validation found, with unions told by the reading that came closest: a person who typed `4-6` for a
 * length hears why it is not a length, not that it isn't an object either.
 */
export const entryIssues = (
  error: z.ZodError,
  at: readonly PropertyKey[] = [],
  known: KnownNames = new Map(),
): EntryIssue[] => error.issues.flatMap((issue) => told(issue, [...at, ...issue.path], known))

/** The names that would have been taken, by the list of those that were not. */
type KnownNames = ReadonlyMap<unknown, readonly string[]>

function told(issue: Issue, path: readonly PropertyKey[], known: KnownNames): EntryIssue[] {
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const closest = issue.errors.reduce((best, branch) =>
      closeness(branch) > closeness(best) ? branch : best,
    )
    if (closeness(closest) > 0)
      return closest.flatMap((inner) => told(inner, [...path, ...inner.path], known))
    const wanted = [...new Set(issue.errors.flatMap(expectations))]
    return [{ pointer: pointerOf(path), message: `write ${wanted.join(' or ')}` }]
  }
  if (issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options)) {
    return [choice(path, issue.options)]
  }
  if (issue.code === 'unrecognized_keys') {
    const names = known.get(issue.keys) ?? []
    return issue.keys.map((key, at) => ({
      pointer: pointerOf([...path, key]),
      message: at < MOST_GUESSED ? unknownName(key, names) : NO_SUCH_FIELD,
    }))
  }
  if (issue.code === 'invalid_value') {
    return [choice(path, issue.values)]
  }
  if (issue.code === 'invalid_type') {
    const missing = issue.input === undefined && /undefined/.test(issue.message)
    const wanted = `write ${articled(issue.expected)}`
    return [
      missing
        ? { pointer: pointerOf(path), message: `is missing: ${wanted}`, kind: 'nothing' }
        : { pointer: pointerOf(path), message: wanted },
    ]
  }
  const isEmpty = issue.code === 'too_small' && issue.origin === 'string'
  const params = issue.code === 'custom' ? issue.params : undefined
  const kind = isEmpty ? 'nothing' : kindIn(params)
  const asked =
    kind === 'unusual' ? { asked: { asks: String(params?.asks), written: String(params?.written) } } : {}
  return [{ pointer: pointerOf(path), message: issue.message, ...(kind && { kind }), ...asked }]
}

const choice = (path: readonly PropertyKey[], choices: readonly unknown[]): EntryIssue => ({
  pointer: pointerOf(path),
  message: `write one of: ${choices.map(String).join(', ')}`,
  kind: 'choice',
})

/** A fault that a schema of ours finds by itself says what it is in `params`. */
const kindIn = (params: { readonly [name: string]: unknown } = {}): IssueKind | undefined =>
  ISSUE_KINDS.find((kind) => kind === params.kind)

const MOST_NAMES = 12
/** What an unknown name may have meant is looked for as often as an answer tells faults: a megabyte of them took half a second. */
const MOST_GUESSED = 100
const NO_SUCH_FIELD = 'there is no field of this name here'

function unknownName(key: string, known: readonly string[]): string {
  const near = nearestName(key, known)
  if (near !== null) return `there is no field of this name here: did you mean "${near}"?`
  return known.length === 0 || known.length > MOST_NAMES
    ? NO_SUCH_FIELD
    : `there is no field of this name here; the fields are ${known.join(', ')}`
}

/** How near a branch of a union came: a fault of our own wording beats a wrong type; a deeper fault beats one at the top. */
function closeness(branch: readonly Issue[]): number {
  return Math.max(
    0,
    ...branch.map((issue) => {
      if (issue.code === 'invalid_union')
        return issue.path.length + Math.max(0, ...issue.errors.map(closeness))
      return issue.code === 'invalid_type' ? issue.path.length : issue.path.length + 1
    }),
  )
}

const expectations = (branch: readonly Issue[]): string[] =>
  branch.flatMap((issue) => {
    if (issue.code === 'invalid_union') return issue.errors.flatMap(expectations)
    return issue.code === 'invalid_type' ? [articled(issue.expected)] : [issue.message]
  })

const WORDS: { readonly [expected: string]: string } = {
  string: 'text in quotation marks',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with named fields',
}
const articled = (expected: string): string => WORDS[expected] ?? expected
