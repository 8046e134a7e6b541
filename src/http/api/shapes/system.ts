import { z } from 'zod'
import { SYSTEM_USES } from '../../../catalog/choices.ts'
import { isShared, type System } from '../../../records/system.ts'
import { systemName } from '../../../words/system.ts'
import { id } from './basics.ts'

/** Which of a parcel's systems, where it has several. */
export const systemAskedFor = z.guid('is not an id').meta({
  description: 'Which of the parcel’s systems, by its id; needed only where it has several',
  examples: ['01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'],
})
export const systemQuery = z.object({ system: systemAskedFor.optional() })

export const systemOnParcel = z.object({
  parcel: id,
  number: z.string(),
  serves: z.boolean(),
  liesOn: z.boolean(),
  bedrooms: z.number().nullable().meta({
    description: 'What it serves there, as the county says; null where a permit states it or nobody does',
  }),
  designFlowGpd: z.number().nullable(),
})

export const system = z
  .object({
    id,
    parcel: id.meta({ description: 'The parcel in whose file its permits and inspections lie' }),
    name: z.string().meta({ description: 'The label, else what it serves' }),
    use: z.enum(SYSTEM_USES).meta({ description: '`main`: the parcel’s own, of which nothing was said' }),
    label: z.string().nullable(),
    shared: z.boolean().meta({ description: 'It serves more than one parcel' }),
    parcels: z.array(systemOnParcel).meta({
      description: 'The parcels that it serves or lies on. Nothing else of another parcel is told',
    }),
    revision: z.number().meta({ description: '0 where nothing was said: made by itself' }),
  })
  .meta({
    id: 'System',
    description:
      'A septic system. A parcel has one of its own, made by itself, with the parcel’s id, until a reviewer says otherwise.',
  })

export const presentSystem = (it: System, among: readonly System[] = [it]): z.output<typeof system> => ({
  id: it.id,
  parcel: it.parcel,
  name: systemName(it, among),
  use: it.use,
  label: it.label,
  shared: isShared(it),
  parcels: it.parcels.map((on) => ({ ...on })),
  revision: it.revision,
})
