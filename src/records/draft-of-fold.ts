import type { AsBuiltComponent, Contradiction } from './as-built.ts'
import type { FiledPermit, StatedComponent } from './permit.ts'

/** What the fold has put together so far. */
export type Draft = {
  components: AsBuiltComponent[]
  contradictions: Contradiction[]
  /** Whether two permits lie in one parcel's file: on a system of two houses each file has a tank of its own. */
  readonly inOneFile: (permit: string, other: string) => boolean
}

export const isNamed = (known: AsBuiltComponent, stated: StatedComponent): boolean =>
  known.kind === stated.kind && sameName(known.label, stated.tag)
const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()

/** The components in service that an entry means, of the file that it lies in where there are any. */
export function targets(draft: Draft, permit: FiledPermit, stated: StatedComponent): AsBuiltComponent[] {
  const meant = meantBy(draft, stated)
  const own = meant.filter(({ events: [{ permit: by }] }) => draft.inOneFile(by.id, permit.id))
  return own.length > 0 ? own : meant
}

/** Those it names, else the one of its name, else all of its kind. */
function meantBy(draft: Draft, stated: StatedComponent): AsBuiltComponent[] {
  const serving = draft.components.filter(({ standing }) => standing === 'in-service')
  if (stated.replaces.length > 0) {
    return serving.filter((known) =>
      stated.replaces.some((tag) => sameName(known.label, tag) || known.key === tag),
    )
  }
  const named = serving.filter((known) => isNamed(known, stated))
  return named.length > 0 ? named : serving.filter((known) => known.kind === stated.kind)
}
