import type { LineDefect, LineStart, Material } from '../catalog/choices.ts'
import type { Quantity } from './quantity.ts'
import type { ShownStretch } from './thing.ts'

/** A piece of a line; to its end where nobody says how long it is. */
export type Span = Pick<ShownStretch, 'from' | 'to'>

/** Where the record has other pipe than the inspection found. */
export type ChangedStretch = Span & {
  readonly material: { readonly recorded: Material; readonly found: Material } | null
  readonly size: { readonly recorded: Quantity; readonly found: Quantity } | null
}

/** Why an answer about a line that is not alike from end to end is what it is. */
export type ReasonOfLine =
  | {
      readonly is: 'stretches'
      readonly start: LineStart | null
      /** Empty where each stretch is as recorded. */
      readonly changed: readonly ChangedStretch[]
      readonly found: readonly ShownStretch[]
      /** Of which the inspection says nothing. */
      readonly unseen: readonly Span[]
    }
  | {
      readonly is: 'defect'
      readonly seen: LineDefect
      readonly start: LineStart | null
      readonly at: number
      readonly to: number | null
      /** What the line is made of there, where that is known. */
      readonly material: Material | null
    }
