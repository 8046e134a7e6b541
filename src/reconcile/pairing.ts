import type { AsBuilt, AsBuiltComponent } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'

/** A component in service on record and what the inspection says of it; `found` is null where the inspection is silent. */
export type Pairing = {
  readonly built: AsBuiltComponent
  readonly found: FoundComponent | null
  /** How the two were taken to be one: the inspector said so, or it is the only one of its kind on both sides. */
  readonly by: 'named' | 'only-of-its-kind' | null
}

/** Something found that the record knows and no longer counts on: abandoned, or left behind by what replaced it. */
export type Former = { readonly built: AsBuiltComponent; readonly found: FoundComponent }

export type Paired = {
  readonly pairings: readonly Pairing[]
  readonly former: readonly Former[]
  /** Found, or searched for, and answering to nothing on record. */
  readonly unrecorded: readonly FoundComponent[]
}

/**
 * Pairs findings with the record. A finding that names a component in service goes to it; one that names an older one
 * goes to what has since taken its place, unless that is answered for, and is then a former component. One that names
 * none goes to the only unanswered component of its kind, if it is itself the only such finding, and neither is placed
 * on the other side of the house. What is left is not on record: nothing is paired by guess.
 */
export function pair(asBuilt: AsBuilt, record: FindingsRecord | null): Paired {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const answers = new Map<string, { found: FoundComponent; by: 'named' | 'only-of-its-kind' }>()
  const named = (found: FoundComponent) => asBuilt.components.find(({ key }) => key === found.key)
  const components = record?.components ?? []
  const [current, others] = [
    components.filter((found) => named(found)?.standing === 'in-service'),
    components.filter((found) => named(found)?.standing !== 'in-service'),
  ]
  for (const found of current) answers.set(found.key!, { found, by: 'named' })
  const former: Former[] = []
  const loose = others.filter((found) => {
    const built = named(found)
    if (!built) return true
    const key = heir(asBuilt, built)
    if (key === null || answers.has(key)) former.push({ built, found })
    else answers.set(key, { found, by: 'named' })
    return false
  })
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
    former,
    unrecorded,
  }
}

/** The component in service that one leads to along replacements; null where it leads to none. */
function heir(asBuilt: AsBuilt, component: AsBuiltComponent): string | null {
  if (component.standing === 'in-service') return component.key
  const next = asBuilt.components.find(({ key }) => key === component.replacedBy)
  return next ? heir(asBuilt, next) : null
}

/** Recorded on one side of the reference wall and found on the other: not one thing. */
function apart(built: AsBuiltComponent, found: FoundComponent): boolean {
  const side = statedValue(built.measures.tie)?.side ?? null
  return side !== null && found.tie !== null && found.tie.side !== null && side !== found.tie.side
}
