import { z } from 'zod'
import { permitAsWritten } from '../../../reading/entry/written.ts'
import { PERMIT_STANDINGS } from '../../../records/filing.ts'
import type { PermitOnFile, PermitRevision } from '../../../store/permits.ts'
import { id, instant } from '../shapes/basics.ts'
import { writtenEntry } from '../shapes/entries.ts'
import { permitRecord, presentPermitRecord } from '../shapes/permit-record.ts'
import { presentSource, source } from '../shapes/source.ts'

const sources = z.record(z.string(), source).meta({
  description:
    'Where each value came from, by JSON Pointer into the record; a value without one has that of the nearest above it',
})

export const permit = z
  .object({
    id,
    parcel: id,
    system: id.meta({ description: 'The system that it builds; a parcel’s own has the parcel’s id' }),
    standing: z
      .enum(PERMIT_STANDINGS)
      .meta({ description: 'A void or merged permit builds nothing; it stays and can be brought back' }),
    mergedInto: id.nullable().meta({ description: 'The permit that it was merged into' }),
    revision: z.number(),
    record: permitRecord,
    entry: writtenEntry.meta({
      description: 'The same as typed: the format that a correction takes as `record`',
    }),
    sources,
    enteredAt: instant,
    changedAt: instant,
  })
  .meta({ id: 'Permit', description: 'A permit in the file of a parcel' })

export const presentPermit = (it: PermitOnFile): z.output<typeof permit> => ({
  id: it.id,
  parcel: it.parcel,
  system: it.system,
  standing: it.standing,
  mergedInto: it.mergedInto,
  revision: it.revision,
  record: presentPermitRecord(it.record),
  entry: { ...permitAsWritten(it.record) },
  sources: presentSources(it.sources),
  enteredAt: it.enteredAt.toISOString(),
  changedAt: it.changedAt.toISOString(),
})

export const permitRevision = z
  .object({
    revision: z.number(),
    reason: z.string().nullable(),
    transcription: id.nullable().meta({ description: 'The confirmed reading it came from' }),
    recordedBy: id,
    recordedAt: instant,
    record: permitRecord,
  })
  .meta({ id: 'PermitRevision', description: 'A revision as it was and will stay' })

export const presentRevision = (it: PermitRevision): z.output<typeof permitRevision> => ({
  revision: it.revision,
  reason: it.reason,
  transcription: it.transcription,
  recordedBy: it.recordedBy,
  recordedAt: it.recordedAt.toISOString(),
  record: presentPermitRecord(it.record),
})

export const suspectedDuplicates = z
  .array(
    z.object({
      id,
      number: z.string(),
      kind: z.string(),
      parcel: id,
      parcelNumber: z.string(),
      address: z.string().nullable(),
    }),
  )
  .meta({ description: 'Permits of the same number, in any writing, in the files of other parcels' })

const presentSources = (of: PermitOnFile['sources']): z.output<typeof sources> =>
  Object.fromEntries(Object.entries(of).map(([pointer, from]) => [pointer, presentSource(from)]))
