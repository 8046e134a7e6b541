import { z } from 'zod'
import { SYSTEM_USES } from '../../../catalog/choices.ts'
import type { SystemEntry } from '../../../operations/systems/change-system.ts'
import { line } from '../../../reading/entry/fields.ts'
import type { SystemChange } from '../../../store/systems.ts'
import { id, instant } from '../shapes/basics.ts'
import { systemOnParcel } from '../shapes/system.ts'

const onParcel = z.strictObject({
  parcel: line(80).meta({ description: 'By number or id', examples: ['07-0412-0031'] }),
  serves: z.boolean().default(true),
  liesOn: z.boolean().default(true),
  bedrooms: z.int('write a whole number').min(0).max(50).nullish().meta({
    description:
      'Of a system that serves several parcels: what it serves there, where no permit of that parcel says so',
  }),
  designFlowGpd: z.int('write a whole number').min(1).max(1_000_000).nullish(),
})

export const systemBody = z
  .strictObject({
    use: z.enum(SYSTEM_USES).meta({
      description:
        'What it serves. Agents and owners read this, and the last word of the label if it is a letter or a number',
    }),
    label: line(60).nullish().meta({ description: 'As the county calls it; not told to agents' }),
    parcels: z.array(onParcel).max(50),
    reason: line(500).meta({ description: 'How this is known; kept with the revision' }),
  })
  .meta({
    id: 'SystemEntry',
    examples: [
      {
        use: 'second-house',
        label: 'shared field of lots 12 and 13',
        parcels: [
          { parcel: '07-0412-0031', serves: true, liesOn: true, bedrooms: 3 },
          { parcel: '07-0412-0032', serves: true, liesOn: false, bedrooms: 3 },
        ],
        reason: 'Found by the inspection of Oct 12, 2026: both houses drain to one field.',
      },
    ],
  })

export const entryOf = ({ label, parcels, ...rest }: z.output<typeof systemBody>): SystemEntry => ({
  ...rest,
  label: label ?? null,
  parcels: parcels.map(({ bedrooms, designFlowGpd, ...it }) => ({
    ...it,
    bedrooms: bedrooms ?? null,
    designFlowGpd: designFlowGpd ?? null,
  })),
})

export const systemHistory = z
  .array(
    z.object({
      revision: z.number(),
      use: z.enum(SYSTEM_USES),
      label: z.string().nullable(),
      parcels: z.array(systemOnParcel),
      reason: z.string(),
      changedBy: id,
      changedAt: instant,
    }),
  )
  .meta({ description: 'Every revision, newest first; empty for a firm' })

export const presentHistory = (it: SystemChange): z.output<typeof systemHistory>[number] => ({
  revision: it.revision,
  use: it.use,
  label: it.label,
  parcels: it.parcels.map((on) => ({ ...on })),
  reason: it.reason,
  changedBy: it.changedBy,
  changedAt: it.changedAt.toISOString(),
})
