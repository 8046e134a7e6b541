import type { FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { Invitation } from '../../../operations/access/invite.ts'
import type { AccountListed } from '../../../store/access/people.ts'
import { invitationAddress } from '../../access/own-address.ts'
import { id, instant } from '../shapes/basics.ts'

/** One line that names something, as a person writes it. */
export const label = z
  .string()
  .trim()
  .min(1, 'write something')
  .max(80, 'at most 80 characters')
  .refine(
    (text) => text.isWellFormed() && !/[\u0000-\u001f\u007f]/.test(text),
    'contains characters that cannot be stored',
  )

export const signInName = z
  .string()
  .min(1, 'write a name')
  .max(80, 'at most 80 characters')
  .meta({
    description: 'The email address or other name they sign in with. Case does not matter',
    examples: ['records.desk'],
  })

export const person = z
  .object({
    id,
    role: z.enum(['firm', 'reviewer', 'agent']),
    label: z.string().meta({ description: 'What the account is for', examples: ['front desk'] }),
    signInName: z.string().nullable().meta({ description: 'Null for an account that uses tokens only' }),
    administers: z
      .boolean()
      .meta({ description: 'Administrator: manages the organization’s people and tokens' }),
    state: z.enum(['invited', 'active', 'suspended', 'erased']),
    secondStep: z.boolean().meta({ description: 'Signs in with a one-time code after the password' }),
    since: instant,
  })
  .meta({
    id: 'Person',
    description: 'An account of an organization: a person who signs in, or a program with tokens',
    examples: [
      {
        id: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11',
        role: 'reviewer',
        label: 'front desk',
        signInName: 'records.desk',
        administers: false,
        state: 'active',
        secondStep: true,
        since: '2026-11-25T09:30:00.000Z',
      },
    ],
  })

export const presentPerson = (it: AccountListed): z.output<typeof person> => ({
  id: it.id,
  role: it.role,
  label: it.label,
  signInName: it.signInName,
  administers: it.administers,
  state: stateOf(it),
  secondStep: it.hasSecondStep,
  since: it.createdAt.toISOString(),
})

export function stateOf({ erasedAt, suspendedAt, signInName: name, hasPassword }: AccountListed) {
  if (erasedAt !== null) return 'erased'
  if (suspendedAt !== null) return 'suspended'
  return name !== null && !hasPassword ? 'invited' : 'active'
}

export const invitation = z
  .object({
    link: z.string().meta({
      description: 'Shown only once. Give it to the person it is for: whoever has it chooses the password',
      examples: ['https://records.example/invitation?code=asfound_…'],
    }),
    expiresAt: instant,
  })
  .meta({ id: 'Invitation' })

export const presentInvitation = (
  request: FastifyRequest,
  { secret, expiresAt }: Invitation,
): z.output<typeof invitation> => ({
  link: invitationAddress(request, secret),
  expiresAt: expiresAt.toISOString(),
})

/** Of the asker's organization; `own` is the asker. */
export const personPath = z.object({
  person: z.union([z.literal('own'), z.guid('is not an id, nor `own`')]).meta({
    description: 'An account of your organization by its id, or `own`',
    examples: ['own'],
  }),
})
