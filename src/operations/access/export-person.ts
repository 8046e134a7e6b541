import { ok } from '../../base/result.ts'
import { type AccessEventRead, eventsOfAccount, recordAccess } from '../../store/access/access-events.ts'
import { admissionsOf, type Organization, organizationById } from '../../store/access/admissions.ts'
import { type OutsideBound, outsideIdentitiesOf } from '../../store/access/outside-identities.ts'
import type { AccountListed } from '../../store/access/people.ts'
import { openSessions, type SessionListed } from '../../store/access/sessions.ts'
import { type TokenListed, tokensOf } from '../../store/access/tokens.ts'
import { DOORKEEPER, memberOf, serviceIn } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { type ActDone, actsOf } from '../../store/events.ts'
import type { Answer } from '../refusal.ts'
import type { Asker } from './asker.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

/** All that is kept of a person. */
export type PersonData = {
  readonly person: AccountListed
  readonly organization: Organization
  readonly outsideIdentities: readonly OutsideBound[]
  readonly sessions: readonly SessionListed[]
  readonly tokens: readonly TokenListed[]
  readonly happenings: readonly AccessEventRead[]
  /** What the account did to the records of each county: what, to which, when. */
  readonly acts: readonly {
    readonly county: string
    readonly done: readonly ActDone[]
    readonly more: boolean
  }[]
}

const MOST_HAPPENINGS = 10_000
const MOST_ACTS = 20_000

/** For the person themself, or for an administrator who passes it on. */
export async function exportPerson(
  context: SignInContext,
  asker: Asker,
  asked: string,
): Promise<Answer<PersonData>> {
  const about = await transact(context.database, memberOf(asker), async (tx, within) => {
    const found = await personAsked(tx, asker, asked)
    if (!found.ok) return found
    const person = found.value
    const { id: account, organization } = person
    const data = {
      person,
      organization: (await organizationById(tx, organization))!,
      counties: (await admissionsOf(tx, organization)).map(({ county }) => county),
      outsideIdentities: await transact(within, DOORKEEPER, (door) => outsideIdentitiesOf(door, account)),
      sessions: await openSessions(tx, account),
      tokens: await tokensOf(tx, account),
      happenings: await eventsOfAccount(tx, account, MOST_HAPPENINGS),
    }
    const event = {
      id: context.newId(),
      kind: 'data-exported',
      organization,
      account,
      at: context.clock(),
    } as const
    await recordAccess(tx, asker, event)
    return ok(data)
  })
  if (!about.ok) return about
  const { counties, ...data } = about.value
  const acts: PersonData['acts'][number][] = []
  for (const county of counties) {
    const done = await transact(context.database, serviceIn(county), (tx) =>
      actsOf(tx, county, data.person.id, MOST_ACTS + 1),
    )
    if (done.length > 0) acts.push({ county, done: done.slice(0, MOST_ACTS), more: done.length > MOST_ACTS })
  }
  return ok({ ...data, acts })
}
