import { z } from 'zod'
import { COMPONENT_KINDS } from '../../../records/component.ts'
import { PERMIT_ACTIONS, PERMIT_KINDS, type PermitRecord } from '../../../records/permit.ts'
import { day } from './basics.ts'
import { measuresOf, presentMeasures } from './measures.ts'
import {
  orNull,
  presentLength,
  presentReference,
  statedLength,
  statedReference,
  statedTie,
} from './quantities.ts'

export const permitRecord = z
  .object({
    number: z.string(),
    kind: z.enum(PERMIT_KINDS),
    issuedOn: day.nullable(),
    approvedOn: day.nullable(),
    bedrooms: z.number().nullable(),
    designFlowGpd: z.number().nullable(),
    percRateMpi: z.number().nullable(),
    soilTexture: z.string().nullable(),
    reference: statedReference.nullable(),
    components: z.array(
      z.object({
        tag: z.string(),
        kind: z.enum(COMPONENT_KINDS),
        action: z.enum(PERMIT_ACTIONS),
        replaces: z.array(z.string()),
        ...measuresOf(statedLength, statedTie),
        note: z.string().nullable(),
      }),
    ),
    remarks: z.string().nullable(),
    unreadable: z.array(z.object({ pointer: z.string(), note: z.string() })),
  })
  .meta({ id: 'PermitRecord', description: 'What the paper says, as confirmed by a person' })

export const presentPermitRecord = (record: PermitRecord): z.output<typeof permitRecord> => ({
  ...record,
  reference: orNull(record.reference, (it) => presentReference(it, presentLength)),
  components: record.components.map((component) => ({
    tag: component.tag,
    kind: component.kind,
    action: component.action,
    replaces: [...component.replaces],
    ...presentMeasures(component, presentLength),
    note: component.note,
  })),
  unreadable: record.unreadable.map(({ pointer, note }) => ({ pointer, note })),
})
