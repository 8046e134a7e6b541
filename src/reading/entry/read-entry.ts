import type { z } from 'zod'
import { err, ok, type Result } from '../../base/result.ts'
import { type EntryIssue, entryIssues } from './issues.ts'

/**
 * Reads what was typed by its schema: the value, or every fault of it. A name that the schema does not know is a fault
 * with the nearest one that it knows, never left out in silence.
 */
export function readEntry<T>(
  schema: z.ZodType<T>,
  value: unknown,
  at: readonly PropertyKey[] = [],
): Result<T, readonly EntryIssue[]> {
  const known = new Map<unknown, readonly string[]>()
  const parsed = schema.safeParse(value, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') known.set(issue.keys, namesOf(issue.inst))
      return undefined
    },
  })
  return parsed.success ? ok(parsed.data) : err(entryIssues(parsed.error, at, known))
}

/** The names that an object's schema takes. */
const namesOf = (schema: unknown): readonly string[] =>
  Object.keys((schema as { _zod?: { def?: { shape?: object } } } | undefined)?._zod?.def?.shape ?? {})
