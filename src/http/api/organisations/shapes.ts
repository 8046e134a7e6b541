import { z } from 'zod'
import type { OwnOrganisation } from '../../../operations/access/organisations.ts'
import type { Admission } from '../../../store/access/admissions.ts'
import { id, instant } from '../shapes/basics.ts'

const kind = z.enum(['county', 'firm', 'agent'])

export const admission = z
  .object({
    id,
    kind,
    name: z.string().meta({ examples: ['Heron Inspections'] }),
    admittedAt: instant,
    withdrawnAt: instant.nullable().meta({ description: 'Works here no longer since then' }),
  })
  .meta({ id: 'Admission', description: 'An organisation as a county knows it' })

export const presentAdmission = (it: Admission): z.output<typeof admission> => ({
  id: it.organisation.id,
  kind: it.organisation.kind,
  name: it.organisation.name,
  admittedAt: it.admittedAt.toISOString(),
  withdrawnAt: it.withdrawnAt?.toISOString() ?? null,
})

export const ownOrganisation = z
  .object({
    id: id.meta({ description: 'Give it to a county that is to admit you' }),
    kind,
    name: z.string(),
    secondStep: z.enum(['offered', 'required']),
    counties: z.array(z.object({ county: z.string(), admittedAt: instant, withdrawnAt: instant.nullable() })),
  })
  .meta({ id: 'OwnOrganisation' })

export const presentOwn = ({
  organisation,
  admissions,
}: OwnOrganisation): z.output<typeof ownOrganisation> => ({
  ...organisation,
  counties: admissions.map(({ county, admittedAt, withdrawnAt }) => ({
    county,
    admittedAt: admittedAt.toISOString(),
    withdrawnAt: withdrawnAt?.toISOString() ?? null,
  })),
})
