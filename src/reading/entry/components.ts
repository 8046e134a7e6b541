import type { z } from 'zod'
import type { Side } from '../../catalog/choices.ts'
import type { Reference, Tie } from '../../records/component.ts'
import type { IssueKind } from './issues.ts'
import { strayFixes } from './stray-fixes.ts'

type FaultAcross = {
  readonly path: readonly ['components', number, string]
  readonly message: string
  readonly kind?: Extract<IssueKind, 'no-corners'>
}

type Across = {
  readonly components?: unknown
  readonly reference?: unknown
  readonly cornerA?: unknown
}

/** What can only be seen by comparing the components of one entry. Fields may be at fault, so nothing is taken for granted. */
export function faultsAcross<N extends string>(
  { components, reference, cornerA }: Across,
  names: readonly N[],
): readonly FaultAcross[] {
  if (!Array.isArray(components)) return []
  const list = components as readonly (
    | ({ readonly tie?: unknown; readonly fix?: unknown } & { readonly [name in N]?: unknown })
    | undefined
  )[]
  const twice = names.flatMap((name) =>
    duplicateNames(list.map((it) => it?.[name])).map((index): FaultAcross => {
      const again =
        name === 'key' ? 'is already answered above' : 'names two components: give each its own name'
      return { path: ['components', index, name], message: `"${list[index]![name]}" ${again}` }
    }),
  )
  const loose = list.flatMap((it, index): readonly FaultAcross[] =>
    it?.tie && !reference
      ? [
          {
            path: ['components', index, 'tie'],
            message: 'a tie needs the reference corners it runs from: fill in reference.a and reference.b',
            kind: 'no-corners',
          },
        ]
      : [],
  )
  return [...twice, ...loose, ...strayFixes(list, cornerA)]
}

/** The same as issues of the entry's schema. */
export function acrossComponents(
  entry: Across,
  names: readonly string[],
  context: z.core.$RefinementCtx,
): void {
  for (const { path, message, kind } of faultsAcross(entry, names))
    context.addIssue({ code: 'custom', path: [...path], message, params: { kind } })
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
