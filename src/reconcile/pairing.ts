import type { AsBuilt, AsBuiltComponent } from '../records/as-built.ts'
import { statedValue } from '../records/claim.ts'
import { sameCorner } from '../records/corner.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'

/** The inspector named it; the labels are the same; it lies where the record has it; or it is the only one of its kind. */
export type PairedBy = 'named' | 'label' | 'position' | 'only-of-its-kind'

/** A component in service on record and what the inspection says of it; `found` is null where the inspection is silent. */
export type Pairing = {
  readonly built: AsBuiltComponent
  readonly found: FoundComponent | null
  /** How the two were taken to be one. */
  readonly by: PairedBy | null
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
 * none goes to the unanswered component of its kind that bears its label, else to the one that its ties place where the
 * record has it, else to the only one left, if it is itself the only such finding, and never to one on the other side of
 * the house. What is left is not on record: nothing is paired by guess.
 */
export function pair(asBuilt: AsBuilt, record: FindingsRecord | null): Paired {
  const serving = asBuilt.components.filter(({ standing }) => standing === 'in-service')
  const answers = new Map<string, { found: FoundComponent; by: PairedBy }>()
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
  const byLabel = matched(loose, serving, answers, 'label', (built, found) =>
    sameName(built.label, found.label),
  )
  const byPlace = matched(byLabel, serving, answers, 'position', (built, found) =>
    liesThere(built, found, record?.reference ?? null),
  )
  const unrecorded = byPlace.filter((found) => {
    const open = serving.filter(({ key, kind }) => kind === found.kind && !answers.has(key))
    const alike = byPlace.filter(({ kind }) => kind === found.kind)
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

type Answers = Map<string, { found: FoundComponent; by: PairedBy }>

/** Pairs those that fit one another and no other; gives back the findings that are left. */
function matched(
  loose: readonly FoundComponent[],
  serving: readonly AsBuiltComponent[],
  answers: Answers,
  by: PairedBy,
  fits: (built: AsBuiltComponent, found: FoundComponent) => boolean,
): readonly FoundComponent[] {
  const open = serving.filter(({ key }) => !answers.has(key))
  const answersTo = (built: AsBuiltComponent, found: FoundComponent) =>
    built.kind === found.kind && !apart(built, found) && fits(built, found)
  return loose.filter((found) => {
    const [built, ...more] = open.filter((it) => answersTo(it, found))
    if (!built || more.length > 0 || loose.filter((it) => answersTo(built, it)).length !== 1) return true
    answers.set(built.key, { found, by })
    return false
  })
}

const sameName = (a: string, b: string): boolean => plain(a) === plain(b)
const plain = (label: string): string => label.toLowerCase().replace(/[^a-z0-9]/g, '')

/** Both ties from the same two corners, each as on record to the accuracy of records and tapes: 2 ft (common practice). */
const NEAR_FT = 2

function liesThere(
  built: AsBuiltComponent,
  { tie }: FoundComponent,
  corners: FindingsRecord['reference'],
): boolean {
  const [recorded, from] = [statedValue(built.measures.tie), statedValue(built.reference)]
  if (!recorded || !tie || !from || !corners) return false
  if (!sameCorner(corners.a, from.a) || !sameCorner(corners.b, from.b)) return false
  return Math.abs(recorded.a.ft - tie.a.ft) <= NEAR_FT && Math.abs(recorded.b.ft - tie.b.ft) <= NEAR_FT
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
