import type { Bounds, Field } from '../../catalog/field.ts'

/**
 * A value beyond what the catalog calls plausible is asked about, and taken once a person says that it is meant by
 * writing so after it: `84 ft, checked`. In words, so that it works in a form, a file and a program alike.
 */
const MARK = /\s*[,;]?\s*\(?\bchecked\b\)?\s*$/i

/** What was typed without the mark, and whether it was there. */
export function unmarked(typed: string): { readonly text: string; readonly checked: boolean } {
  const text = typed.replace(MARK, '')
  return { text, checked: text !== typed }
}

export const marked = (written: string): string => `${written}, checked`

export const isWithin = ([least, most]: Bounds, value: number): boolean => value >= least && value <= most

/** A number as it is typed: marked as meant where it is beyond what is usual of its field. */
export const numberTyped = (field: Field, value: number): number | string =>
  (field.value === 'whole' || field.value === 'number') &&
  field.plausible &&
  !isWithin(field.plausible, value)
    ? marked(String(value))
    : value
