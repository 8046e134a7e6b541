import type { StatedLength } from '../measure/parse/length.ts'
import type { Claim } from './as-built.ts'
import type { Measures } from './component.ts'

export type Segments<L = StatedLength> = NonNullable<Measures<L>['segments']>
type Segment = Segments[number]

/**
 * The stretches of a line after a later permit laid some of it anew: what it names takes the place of what lay there,
 * and what it does not name lies as it did. Both papers are then the origin of the list.
 */
export function laidOver(older: Claim<Segments>, newer: Claim<Segments>): Claim<Segments> {
  if (newer.state === 'silent') return older
  if (older.state !== 'stated' || newer.state !== 'stated') return newer
  const left = newer.value.reduce<readonly Segment[]>(
    (rest, fresh) => rest.flatMap((old) => without(old, fresh)),
    older.value,
  )
  return {
    ...newer,
    value: [...left, ...newer.value].sort((a, b) => a.from.ft - b.from.ft),
    ...(left.length > 0 ? { also: [older.origin, ...(older.also ?? [])] } : {}),
  }
}

/** What is left of one stretch beside another. */
const without = (old: Segment, fresh: Segment): readonly Segment[] =>
  [
    { ...old, to: shorter(old.to, fresh.from) },
    { ...old, from: longer(old.from, fresh.to) },
  ].filter(({ from, to }) => to.ft > from.ft)

const shorter = (a: StatedLength, b: StatedLength): StatedLength => (b.ft < a.ft ? b : a)
const longer = (a: StatedLength, b: StatedLength): StatedLength => (b.ft > a.ft ? b : a)
