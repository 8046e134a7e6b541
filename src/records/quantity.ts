import type { Method } from '../measure/methods.ts'
import type { StatedLength } from '../measure/parse/length.ts'

/** A length found in the field: the reading, how it was taken and with which instrument (one tape is one cause). */
export type FoundLength = StatedLength & { readonly method: Method; readonly instrument: string }
