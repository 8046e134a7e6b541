import { fieldAt, type Place } from '../../catalog/catalog.ts'
import type { StatedLength } from '../../measure/parse/length.ts'
import type { StatedVolume } from '../../measure/parse/volume.ts'
import type { FindingsRecord, FoundComponent } from '../../records/findings.ts'
import type { PermitRecord } from '../../records/permit.ts'
import type { FoundLength } from '../../records/quantity.ts'
import type { FindingsEntry } from './findings.ts'
import { numberTyped } from './marked.ts'
import type { PermitEntry } from './permit.ts'

/**
 * A record in the form it is typed in, so that it can be read, changed in one place and sent back: reading it again
 * gives the same record. Lengths and volumes come as they were written; what a record does not say is left out.
 */
export const permitAsWritten = (record: PermitRecord): PermitEntry =>
  written(
    withNumbers('permit', {
      ...record,
      components: record.components.map((it) => withNumbers('component', it)),
    }),
  ) as PermitEntry

/** The same for findings: each length with the method and the instrument it was taken by. */
export const findingsAsWritten = (record: FindingsRecord): FindingsEntry =>
  written(
    withNumbers('inspection', {
      ...record,
      components: record.components.map((it) => withNumbers('component', withLevels(it))),
    }),
  ) as FindingsEntry

/** A number beyond what is usual stands in the record because a person said that it is meant. */
const withNumbers = (place: Place, record: object): object =>
  Object.fromEntries(
    Object.entries(record).map(([name, value]) => {
      const field = fieldAt(place, name)
      return [name, field && typeof value === 'number' ? numberTyped(field, value) : value]
    }),
  )

/** A level is typed as above or below, and kept as one height. */
const withLevels = (found: FoundComponent): object =>
  Object.fromEntries(
    Object.entries(found).map(([name, value]) => {
      if (fieldAt('component', name)?.value !== 'level' || value === null) return [name, value]
      const { ft, asWritten, method } = value as FoundLength
      return [name, { [ft < 0 ? 'below' : 'above']: asWritten, method }]
    }),
  )

function written(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(written)
  if (typeof value !== 'object' || value === null) return value
  if (isFound(value)) return { length: value.asWritten, method: value.method, instrument: value.instrument }
  if (isQuantity(value)) return value.asWritten
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, field]) => (field === null ? [] : [[key, written(field)]])),
  )
}

const isQuantity = (value: object): value is StatedLength | StatedVolume =>
  'asWritten' in value && ('ft' in value || 'gal' in value)
const isFound = (value: object): value is FoundLength => isQuantity(value) && 'instrument' in value
