import type { EntryIssue } from '../../../reading/entry/issues.ts'
import type { System } from '../../../records/system.ts'

/** A row of the form: one parcel, as it was typed. */
export type TypedParcel = {
  readonly parcel: string
  readonly serves: boolean
  readonly liesOn: boolean
  readonly bedrooms: string
  readonly designFlowGpd: string
}

/** A system's form as it was typed; without an id it is a new one. */
export type TypedSystem = {
  readonly id: string
  readonly revision: string
  readonly use: string
  readonly label: string
  readonly reason: string
  readonly parcels: readonly TypedParcel[]
}

export type FormReturned = { readonly typed: TypedSystem; readonly faults: readonly string[] }

const NO_PARCEL: TypedParcel = { parcel: '', serves: false, liesOn: false, bedrooms: '', designFlowGpd: '' }

/** As it stands, with room for two more parcels; a new one begins on the parcel whose page this is. */
export function formOf(system: System | null, number: string): TypedSystem {
  const parcels = system
    ? system.parcels.map((it) => ({
        parcel: it.number,
        serves: it.serves,
        liesOn: it.liesOn,
        bedrooms: it.bedrooms === null ? '' : String(it.bedrooms),
        designFlowGpd: it.designFlowGpd === null ? '' : String(it.designFlowGpd),
      }))
    : [{ ...NO_PARCEL, parcel: number, serves: true, liesOn: true }]
  return {
    id: system?.id ?? '',
    revision: String(system?.revision ?? 0),
    use: system?.use ?? 'cottage',
    label: system?.label ?? '',
    reason: '',
    parcels: [...parcels, NO_PARCEL, NO_PARCEL],
  }
}

/** More rows than that no form has. */
const MOST_ROWS = 60

export function typedBy(body: unknown): TypedSystem {
  const sent = (body ?? {}) as Readonly<Record<string, unknown>>
  const text = (name: string): string => (typeof sent[name] === 'string' ? (sent[name] as string).trim() : '')
  const parcels: TypedParcel[] = []
  for (let row = 0; row < MOST_ROWS && `parcel-${row}` in sent; row += 1) {
    parcels.push({
      parcel: text(`parcel-${row}`),
      serves: `serves-${row}` in sent,
      liesOn: `lies-on-${row}` in sent,
      bedrooms: text(`bedrooms-${row}`),
      designFlowGpd: text(`flow-${row}`),
    })
  }
  const [id, revision, use, label, reason] = ['id', 'revision', 'use', 'label', 'reason'].map(text)
  return { id: id!, revision: revision!, use: use!, label: label!, reason: reason!, parcels }
}

/** Rows whose number was emptied are left out: the system does not reach there. */
export const bodyOf = ({ use, label, reason, parcels }: TypedSystem) => ({
  use,
  ...(label === '' ? {} : { label }),
  reason,
  parcels: rowsOf(parcels).map(({ bedrooms, designFlowGpd, ...it }) => ({
    ...it,
    ...(bedrooms === '' ? {} : { bedrooms: whole(bedrooms) }),
    ...(designFlowGpd === '' ? {} : { designFlowGpd: whole(designFlowGpd) }),
  })),
})

const rowsOf = (parcels: readonly TypedParcel[]): readonly TypedParcel[] =>
  parcels.filter(({ parcel }) => parcel !== '')

/** What is no number stays as it was typed, and is refused with it. */
const whole = (typed: string): unknown => (/^\d{1,7}$/.test(typed) ? Number(typed) : typed)

const FIELDS: Readonly<Record<string, string>> = {
  use: 'What it serves',
  label: 'Label',
  reason: 'How this is known',
  parcels: 'Parcels',
  parcel: 'Parcel',
  bedrooms: 'Bedrooms',
  designFlowGpd: 'Design flow',
}

/** Each fault with the field that it is of, as the form calls it. */
export const faultsOf = (
  issues: readonly EntryIssue[],
  { parcels }: Pick<TypedSystem, 'parcels'>,
): readonly string[] =>
  issues.map(({ pointer, message }) => {
    const [, first = '', row, last] = pointer.split('/')
    const number = row === undefined ? undefined : rowsOf(parcels)[Number(row)]?.parcel
    const field = FIELDS[last ?? first] ?? 'The form'
    return number === undefined ? `${field}: ${message}.` : `${field} (${number}): ${message}.`
  })
