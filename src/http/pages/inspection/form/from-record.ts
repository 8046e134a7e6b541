import type { FindingsRecord, FoundComponent } from '../../../../records/findings.ts'
import type { SheetPart } from '../sheet/sheet.ts'
import { ALL_FIELDS } from './asked.ts'
import type { InspectionForm, PartForm, Typed } from './typed.ts'

/** A length as the service tells it: what a record holds and what the API answers are the same as far as a form goes. */
type Told = {
  readonly ft: number
  readonly asWritten: string
  readonly method: string
  readonly instrument: string
}

type ToldTie = {
  readonly a: Told
  readonly b: Told
  readonly side: string | null
  readonly sideWords: string | null
}
type ToldFix = {
  readonly lat: number
  readonly lon: number
  readonly radiusFt: number
  readonly coverage: number
}

/** A record with its lengths as the API answers them. */
export type ToldRecord = Omit<FindingsRecord, 'components' | 'reference'> & {
  readonly reference: {
    readonly a: string
    readonly b: string
    readonly baseline: Told | null
    readonly wall: string | null
    readonly bearingDeg: number | null
  } | null
  readonly components: readonly (Pick<FoundComponent, 'key' | 'label' | 'kind' | 'outcome' | 'searchedBy'> & {
    readonly [field: string]: unknown
  })[]
}

/**
 * The form that these findings would have been typed into: reading it again gives the same record. A component with no
 * key goes to the step of its name and kind, where the record has one.
 */
export function formOf(
  record: ToldRecord,
  parts: readonly Pick<SheetPart, 'id' | 'key' | 'kind' | 'label'>[],
): InspectionForm {
  let added = 0
  const taken = new Set(record.components.map(({ key }) => key))
  return {
    start: startOf(record),
    notes: record.notes ?? '',
    parts: record.components.map((found): PartForm => {
      const known =
        parts.find(({ key }) => key === found.key) ??
        parts.find(
          ({ key, kind, label }) =>
            !found.key && !taken.has(key) && kind === found.kind && label === found.label,
        )
      if (known) {
        const { id, key, kind } = known
        const other: Typed = kind === found.kind ? {} : { kind: found.kind }
        return { id, key, kind, label: found.label, typed: { ...other, ...typedOf(found) } }
      }
      added += 1
      const { key, kind, label } = found
      return { id: `added-${added}`, key, kind, label, typed: typedOf(found) }
    }),
  }
}

function startOf({
  inspectedOn,
  occupancy,
  people,
  bedroomsCounted,
  lastPumpedOn,
  reference,
}: ToldRecord): Typed {
  return present({
    inspectedOn,
    occupancy,
    people,
    bedroomsCounted,
    lastPumpedOn,
    ...(reference && {
      'reference.a': reference.a,
      'reference.b': reference.b,
      'reference.wall': reference.wall,
      'reference.bearingDeg': reference.bearingDeg,
      ...(reference.baseline && lengthTyped('reference.baseline', reference.baseline)),
    }),
  })
}

function typedOf(found: ToldRecord['components'][number]): Typed {
  const typed: Record<string, unknown> = {
    outcome: found.outcome,
    notReachedBecause: found.notReachedBecause,
    note: found.note,
  }
  for (const method of found.searchedBy) typed[`searchedBy.${method}`] = 'on'
  for (const [name, { as }] of [...ALL_FIELDS, ['searchedWithin', { as: 'length' }] as const]) {
    const value = found[name]
    if (value === null || value === undefined || name.includes('.')) continue
    if (as === 'length') Object.assign(typed, lengthTyped(name, value as Told))
    else if (as === 'level') Object.assign(typed, levelTyped(name, value as Told))
    else if (as === 'volume') typed[name] = (value as { readonly asWritten: string }).asWritten
    else typed[name] = value === true ? 'yes' : value === false ? 'no' : value
  }
  const [tie, fix] = [found.tie as ToldTie | null, found.fix as ToldFix | null]
  if (tie) {
    Object.assign(typed, lengthTyped('tie.a', tie.a), lengthTyped('tie.b', tie.b), {
      'tie.side': tie.side,
      'tie.sideWords': tie.sideWords,
    })
  }
  if (fix) for (const [name, value] of Object.entries(fix)) typed[`fix.${name}`] = value
  return present(typed)
}

const lengthTyped = (name: string, { asWritten, method, instrument }: Told): object => ({
  [name]: asWritten,
  [`${name}.how`]: method,
  ...(instrument === method ? {} : { [`${name}.by`]: instrument }),
})

function levelTyped(name: string, told: Told): object {
  const side = told.ft === 0 ? 'at' : told.ft < 0 ? 'below' : 'above'
  const plain = { [name]: told.asWritten, [`${name}.how`]: told.method, [`${name}.side`]: side }
  return side === 'at' && told.asWritten === '0 in' ? { ...plain, [name]: '' } : plain
}

/** What is there, as text. */
const present = (values: Readonly<Record<string, unknown>>): Typed =>
  Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) =>
      value === null || value === undefined || value === '' ? [] : [[name, String(value)]],
    ),
  )
