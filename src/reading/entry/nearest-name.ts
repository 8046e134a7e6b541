import { CATALOG } from '../../catalog/catalog.ts'
import type { Fields } from '../../catalog/field.ts'
import { lettersApart } from '../values/near-word.ts'

const plain = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '')

/** Other words for a field: what its columns are headed with elsewhere. */
const aliasesOf = (name: string): readonly string[] =>
  Object.values(CATALOG).flatMap((fields: Fields) =>
    Object.hasOwn(fields, name) ? (fields[name]!.aliases ?? []) : [],
  )

/**
 * The known name that a mistyped one most likely means: one that is called so elsewhere, or is a slip of a few letters
 * away (one in three at most). Null where none is near.
 */
export function nearestName(typed: string, known: readonly string[]): string | null {
  const meant = plain(typed)
  if (meant === '' || meant.length > 60) return null
  const other = known.find((name) => [name, ...aliasesOf(name)].some((word) => plain(word) === meant))
  if (other !== undefined) return other
  const near = known
    .map((name) => ({ name, apart: lettersApart(meant, plain(name)) }))
    .filter(({ name, apart }) => apart <= Math.max(1, Math.floor(Math.max(meant.length, name.length) / 3)))
    .sort((a, b) => a.apart - b.apart)[0]
  return near?.name ?? null
}
