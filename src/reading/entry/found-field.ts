import type { FieldOf } from '../../catalog/field.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import type { Method } from '../../measure/methods.ts'
import { foundLength } from './found-length.ts'
import { beyondPossible, issueOf, unusualValue } from './unusual.ts'

/** A length taken in the field, held to what the catalog says is possible, and usual, of its field on such a component. */
export const foundField = (field: FieldOf<'length'>, kind?: ComponentKind, usual: Method = field.ways[0]) =>
  foundLength(usual).superRefine((value, context) => {
    const fault = beyondPossible(field, value) ?? unusualValue(field, value, kind)
    if (fault !== null) context.addIssue(issueOf(fault))
  })
