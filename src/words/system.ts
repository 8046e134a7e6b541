import type { SystemUse } from '../catalog/choices.ts'
import type { System } from '../records/system.ts'
import { listed } from './sentence.ts'

/** Which parcels it serves and lies on, in a sentence or two. */
export function systemReach({ parcels }: Pick<System, 'parcels'>): string {
  const numbers = (of: (it: System['parcels'][number]) => boolean) =>
    listed(parcels.filter(of).map(({ number }) => number))
  const [served, lain] = [numbers(({ serves }) => serves), numbers(({ liesOn }) => liesOn)]
  if (parcels.length === 0) return 'It is no system any more.'
  if (served === lain) return `It serves and lies on ${served}.`
  if (served === '') return `It lies on ${lain}. What it serves is not known.`
  return lain === '' ? `It serves ${served}.` : `It serves ${served} and lies on ${lain}.`
}

/** What a system serves, as a name for it. */
export const SYSTEM_USE_WORDS: { readonly [U in SystemUse]: string } = {
  main: 'main system',
  'main-house': 'main house',
  'second-house': 'second house',
  cottage: 'cottage',
  'dwelling-unit': 'dwelling unit',
  laundry: 'laundry',
  workshop: 'workshop or barn',
  business: 'business',
  'other-building': 'other building',
}

type Named = Pick<System, 'id' | 'use' | 'label'>

/** As whoever works with the file reads it: the county's label, else what it serves; numbered where that names several. */
export function systemName(system: Named, among: readonly Named[] = [system]): string {
  if (system.label !== null) return system.label
  const alike = among.filter(({ use, label }) => use === system.use && label === null)
  const name = SYSTEM_USE_WORDS[system.use]
  return alike.length > 1 ? `${name} ${alike.findIndex(({ id }) => id === system.id) + 1}` : name
}
