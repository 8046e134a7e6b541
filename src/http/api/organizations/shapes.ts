import { z } from 'zod'
import type { OwnOrganization } from '../../../operations/access/organizations.ts'
import type { Admission } from '../../../store/access/admissions.ts'
import { id, instant } from '../shapes/basics.ts'

const kind = z.enum(['county', 'firm', 'agent'])

export const admission = z
  .object({
    id,
    kind,
    name: z.string().meta({ examples: ['Heron Inspections'] }),
    admittedAt: instant,
    withdrawnAt: instant.nullable().meta({ description: 'Its access ended then' }),
  })
  .meta({ id: 'Admission', description: 'An organization as a county knows it' })

export const presentAdmission = (it: Admission): z.output<typeof admission> => ({
  id: it.organization.id,
  kind: it.organization.kind,
  name: it.organization.name,
  admittedAt: it.admittedAt.toISOString(),
  withdrawnAt: it.withdrawnAt?.toISOString() ?? null,
})

export const ownOrganization = z
  .object({
    id: id.meta({ description: 'Give it to a county that is to add you' }),
    kind,
    name: z.string(),
    secondStep: z.enum(['offered', 'required']),
    counties: z.array(z.object({ county: z.string(), admittedAt: instant, withdrawnAt: instant.nullable() })),
  })
  .meta({ id: 'OwnOrganization' })

export const presentOwn = ({
  organization,
  admissions,
}: OwnOrganization): z.output<typeof ownOrganization> => ({
  ...organization,
  counties: admissions.map(({ county, admittedAt, withdrawnAt }) => ({
    county,
    admittedAt: admittedAt.toISOString(),
    withdrawnAt: withdrawnAt?.toISOString() ?? null,
  })),
})
