import { z } from 'zod'
import type { PersonData } from '../../../operations/access/export-person.ts'
import { ACCESS_EVENTS } from '../../../store/access/access-events.ts'
import { presentSession, session } from '../sessions/shapes.ts'
import { id, instant } from '../shapes/basics.ts'
import { presentToken, token } from '../tokens/shapes.ts'
import { person, presentPerson } from './shapes.ts'

export const personData = z
  .object({
    person,
    organization: z.object({ id, name: z.string() }),
    outsideIdentities: z.array(z.object({ issuer: z.string(), subject: z.string(), boundAt: instant })),
    sessions: z.array(session),
    tokens: z.array(token),
    happenings: z
      .array(z.object({ kind: z.enum(ACCESS_EVENTS), at: instant, byThemself: z.boolean() }))
      .meta({ description: 'What happened to the account, its tokens and sessions' }),
    acts: z
      .array(
        z.object({
          county: z.string(),
          done: z.array(
            z.object({ kind: z.string(), subjectKind: z.string(), subject: z.string(), at: instant }),
          ),
          more: z.boolean().meta({ description: 'There are older ones than the 20,000 listed here' }),
        }),
      )
      .meta({ description: 'What the account did to which record. The records are the county’s and stay' }),
  })
  .meta({ id: 'PersonData' })

export const presentData = (data: PersonData): z.output<typeof personData> => ({
  person: presentPerson(data.person),
  organization: { id: data.organization.id, name: data.organization.name },
  outsideIdentities: data.outsideIdentities.map(({ issuer, subject, boundAt }) => ({
    issuer,
    subject,
    boundAt: boundAt.toISOString(),
  })),
  sessions: data.sessions.map((it) => presentSession(it, null)),
  tokens: data.tokens.map(presentToken),
  happenings: data.happenings.map(({ kind, at, madeBy }) => ({
    kind,
    at: at.toISOString(),
    byThemself: madeBy === data.person.id,
  })),
  acts: data.acts.map(({ county, done, more }) => ({
    county,
    done: done.map(({ at, ...act }) => ({ ...act, at: at.toISOString() })),
    more,
  })),
})
