import type { AsBuilt, AsBuiltComponent } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'

/** A component in service on record and what the visit says of it; `found` is null where the visit is silent. */
export type Pairing = {
  readonly built: AsBuiltComponent
  readonly found: FoundComponent | null
  /** How the two were taken to be one: the inspector said so, or it is the only one of its kind on both sides. */
  readonly by: 'named' | 'only-of-its-kind' | null
}

/**
 * Pairs findings with the record. A finding that names a component goes to it, or to what has since taken its place.
 * One that names none goes to the only unanswered component of its kind, if it is itself the only such finding, and
 * neither is placed on the other side of the house. What is left is not on record: nothing is paired by guess.
 */
export function pair(
  asBuilt: AsBuilt,
  record: FindingsRecord | null,
): { readonly pairings: readonly Pairing[]; readonly unrecorded: readonly FoundComponent[] } {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const answers = new Map<string, { found: FoundComponent; by: 'named' | 'only-of-its-kind' }>()
  const loose: FoundComponent[] = []
  for (const found of record?.components ?? []) {
    const key = found.key === null ? null : heir(asBuilt, found.key)
    if (key !== null && !answers.has(key)) answers.set(key, { found, by: 'named' })
    else loose.push(found)
  }
  const unrecorded = loose.filter((found) => {
    const open = serving.filter(({ key, kind }) => kind === found.kind && !answers.has(key))
    const alike = loose.filter(({ kind }) => kind === found.kind)
    const [only] = open
    if (open.length !== 1 || alike.length !== 1 || !only || apart(only, found)) return true
    answers.set(only.key, { found, by: 'only-of-its-kind' })
    return false
  })
  return {
    pairings: serving.map((built) => {
      const answer = answers.get(built.key)
      return { built, found: answer?.found ?? null, by: answer?.by ?? null }
    }),
    unrecorded,
  }
}

/** The component in service that a key leads to, along replacements; null where it leads to none. */
function heir(asBuilt: AsBuilt, key: string): string | null {
  const component = asBuilt.components.find((known) => known.key === key)
  if (!component) return null
  if (component.standing === 'in-service') return key
  return component.replacedBy === null ? null : heir(asBuilt, component.replacedBy)
}

/** Recorded on one side of the reference wall and found on the other: not one thing. */
function apart(built: AsBuiltComponent, found: FoundComponent): boolean {
  const side = statedValue(built.measures.tie)?.side ?? null
  return side !== null && found.tie !== null && found.tie.side !== null && side !== found.tie.side
}
