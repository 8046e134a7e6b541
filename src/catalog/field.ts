import type { Method } from '../measure/methods.ts'
import type { ComponentKind } from './kinds.ts'
import type { Ways } from './ways.ts'

/**
 * One fact that people write down, declared once. What reads it, checks it, asks for it, answers it, imports it and
 * documents it is made from this; only its words are elsewhere (`words/fields.ts`), under its place in the catalog.
 */
export type Field = Common & Value

type Common = {
  /** On whose form it stands. */
  readonly by: 'permit' | 'inspection' | 'both'
  /** A record without it is refused. A field without this or a `default` may be left out, and is null then. */
  readonly needed?: true
  readonly example?: string | number | boolean
  /** What heads a column of it in other people's files, besides its own name; compared without case and signs. */
  readonly aliases?: readonly string[]
  /** Which kinds of component have it, and what is particular to them. */
  readonly on?: readonly Use[]
  /** Where on the inspection form it stands; without one the form has a place of its own for it. */
  readonly section?: Section
  /**
   * What a permit says of it is part of the as-built. `measure`: of the component. `design`: of the whole system, so that
   * a repair that says otherwise contradicts. `site`: of the ground, where the newer reading stands.
   */
  readonly asBuilt?: 'measure' | 'design' | 'site'
}

/** In the order of the form: what it is, its inside, what stands in it, what state it is in, what it keeps away from. */
export const SECTIONS = ['what', 'size', 'contents', 'state', 'distances'] as const
export type Section = (typeof SECTIONS)[number]

export type Use = {
  readonly kinds: readonly ComponentKind[]
  /** Words of its own for these kinds. */
  readonly words?: string
  readonly plausible?: Bounds
  readonly ways?: Ways
  /** Choices that are usual for these kinds, to be offered first. */
  readonly usual?: readonly string[]
}

/** In the unit of the field, both ends included. */
export type Bounds = readonly [least: number, most: number]

type Limits = {
  /** Beyond these it is refused. */
  readonly possible: Bounds
  /** Beyond these a person is asked whether it was meant: it is fixed, or marked as checked. */
  readonly plausible?: Bounds
}

/** A size: none of it is none at all, and not a size of zero. */
type Size = { readonly open?: 'least' }

type Value =
  | ({ readonly value: 'length'; readonly unit: 'ft'; readonly ways: Ways } & Limits & Size)
  /** A height above or below something, kept as one length with its sign. */
  | ({ readonly value: 'level'; readonly unit: 'ft'; readonly ways: Ways } & Limits)
  | ({ readonly value: 'volume'; readonly unit: 'gal' } & Limits & Size)
  | ({ readonly value: 'whole' } & Limits)
  | ({
      readonly value: 'number'
      readonly unit: 'gpd' | 'min/in' | 'sq ft' | 'degrees' | 'ft'
      /** An end of `possible` that is itself not possible. */
      readonly open?: 'least' | 'most'
    } & Limits)
  /** A day, or a day as far as it is known. */
  | { readonly value: 'date' | 'partial-date' | 'flag' }
  | { readonly value: 'line' | 'prose'; readonly most: number }
  | { readonly value: 'lines'; readonly most: number; readonly default: readonly string[] }
  | {
      readonly value: 'choice'
      readonly choices: readonly (string | number)[]
      readonly default?: string | number
    }
  | { readonly value: 'choices'; readonly choices: readonly string[]; readonly default: readonly string[] }
  /** Several facts that are nothing by themselves: a tie, a fix, the reference corners. */
  | { readonly value: 'group'; readonly parts: Fields }
  /** A group as often as it is there, in the order in which it is written: the stretches of a line. */
  | { readonly value: 'rows'; readonly most: number; readonly parts: Fields }

export type Fields = { readonly [name: string]: Field }
export type FieldOf<V extends Field['value']> = Extract<Field, { readonly value: V }>

/** What a kind of component has of a field, where it has it. */
export const useOn = ({ on }: Field, kind: ComponentKind): Use | undefined =>
  on?.find(({ kinds }) => kinds.includes(kind))

export const waysOf = (
  field: FieldOf<'length' | 'level'>,
  kind?: ComponentKind,
): readonly [Method, ...Method[]] => (kind === undefined ? undefined : useOn(field, kind)?.ways) ?? field.ways
