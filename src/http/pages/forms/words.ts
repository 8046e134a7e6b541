import type { FieldPlace } from '../../../reading/family/taught-form.ts'
import type { FormState } from '../../../store/taught-forms.ts'
import { PERMIT_FIELDS, partFields } from '../documents/fields.ts'

export const STATE_WORDS: { readonly [S in FormState]: string } = {
  proposed: 'proposed',
  'in-force': 'in use',
  withdrawn: 'retired',
}

/** What a form asks under another name than the entry has for it. */
const POINTERS: Readonly<Record<string, string>> = {
  parcelNumber: '/parcel',
  cornerA: '/reference/a',
  cornerB: '/reference/b',
  baseline: '/reference/baseline',
  tieA: '/components/0/tie/a',
  tieB: '/components/0/tie/b',
}
const labelAt = (name: string, kind: string | null): string | undefined =>
  [...PERMIT_FIELDS, ...partFields(0, kind ?? undefined)].find((asked) => asked.name === name)?.label

/** A field of a form in words: `Tank, liquid depth`. */
export function fieldWords({ ask, kind }: Pick<FieldPlace, 'ask' | 'kind'>): string {
  if (ask === 'address') return 'Address'
  const name = POINTERS[ask] ?? (kind === null ? `/${ask}` : `/components/0/${ask}`)
  const label = labelAt(name, kind) ?? ask
  if (kind === null) return label
  const part = kind.replaceAll('-', ' ')
  return `${part.charAt(0).toUpperCase()}${part.slice(1)}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`
}
