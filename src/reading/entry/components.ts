import type { z } from 'zod'
import type { Side } from '../../catalog/choices.ts'
import type { Reference, Tie } from '../../records/component.ts'

/** What can only be seen by comparing the components of one entry. Fields may be at fault, so nothing is taken for granted. */
export function acrossComponents<N extends string>(
  { components, reference }: { readonly components?: unknown; readonly reference?: unknown },
  names: readonly N[],
  context: z.core.$RefinementCtx,
): void {
  if (!Array.isArray(components)) return
  const list = components as readonly (
    | ({ readonly tie?: unknown } & { readonly [name in N]?: unknown })
    | undefined
  )[]
  for (const name of names) {
    for (const index of duplicateNames(list.map((it) => it?.[name]))) {
      const message =
        name === 'key'
          ? `"${list[index]![name]}" is already answered above`
          : `"${list[index]![name]}" names two components: give each its own name`
      context.addIssue({ code: 'custom', path: ['components', index, name], message })
    }
  }
  list.forEach((it, index) => {
    if (it?.tie && !reference)
      context.addIssue({
        code: 'custom',
        path: ['components', index, 'tie'],
        message: 'a tie needs the reference corners it runs from: fill in reference.a and reference.b',
      })
  })
}

/** Indexes of the later ones among equal names; what is no text is no name. */
export function duplicateNames(names: readonly unknown[]): number[] {
  const seen = new Set<string>()
  return names.flatMap((name, index) => {
    if (typeof name !== 'string') return []
    const plain = name.trim().toLowerCase()
    if (seen.has(plain)) return [index]
    seen.add(plain)
    return []
  })
}

type Wall = Reference<unknown>['wall']

/** Components with the side of each tie settled: as it was said, else as its words mean it. */
export const withSides = <C extends { readonly tie: Tie<unknown> | null }>(
  components: readonly C[],
  wall: Wall,
): readonly C[] =>
  components.map((it) => ({
    ...it,
    tie: it.tie && { ...it.tie, side: it.tie.side ?? sideFromWords(it.tie.sideWords, wall) },
  }))

/**
 * The side a phrase means, given the wall the corners belong to: "rear of house" is away from a rear wall and toward
 * the house from a front wall. Null where the words do not settle it.
 */
function sideFromWords(words: string | null, wall: Wall): Side | null {
  if (words === null || wall === null) return null
  const text = words.toLowerCase()
  const named = [...text.matchAll(/\b(front|rear|back|behind|left|right)\b/g)].map(([word]) =>
    word === 'back' || word === 'behind' ? 'rear' : word,
  )
  if (new Set(named).size !== 1) return null
  const opposite = { front: 'rear', rear: 'front', left: 'right', right: 'left' } as const
  if (named[0] === wall) return 'away'
  return named[0] === opposite[wall] ? 'toward' : null
}
