import { must } from '../../../../src/base/result.ts'
import { setPassword } from '../../../../src/operations/access/set-password.ts'
import { signIn } from '../../../../src/operations/access/sign-in.ts'
import { addAccount, addOrganization, issueToken } from '../../../../src/store/access/enrol.ts'
import type { Role } from '../../../../src/store/database/actor.ts'
import { administer } from '../../../../src/store/database/transact.ts'
import type { TestApp } from '../../../support/app.ts'
import { COUNTY } from '../../../support/people.ts'

export type Subject = {
  readonly name: string
  /** Null for nobody, and for whom no token lets in any more. */
  readonly role: Role | null
  readonly account: string
  readonly organization: string
  /** Works in the county of the test. */
  readonly here: boolean
  readonly administers: boolean
  readonly manages: boolean
  readonly writes: boolean
  /** Comes by a cookie, from a page of another site. */
  readonly crossSite: boolean
  readonly headers: Readonly<Record<string, string>>
}

const PASSWORD = 'four words of no kinship'
const KIND = { reviewer: 'county', firm: 'firm', agent: 'agent' } as const

/** Everybody who might ask: each role, its rival, those who look after it, strangers, and those who are out. */
export async function gather({ services, people }: TestApp): Promise<readonly Subject[]> {
  const { database } = services
  const bearer = (token: string) => ({ authorization: `Bearer ${token}` })
  const subject = (
    name: string,
    given: Pick<Subject, 'role' | 'account' | 'organization' | 'headers'> & Partial<Subject>,
  ): Subject => ({
    name,
    here: true,
    administers: false,
    manages: true,
    writes: true,
    crossSite: false,
    ...given,
  })

  type Enrolling = { role: Role; organization?: string; county?: string; administers?: boolean }
  const enrol = ({ role, organization, county = COUNTY, administers = false }: Enrolling) =>
    administer(database, async (tx) => {
      const kind = KIND[role]
      const home =
        organization ?? (await addOrganization(tx, { kind, name: `${kind} of another`, counties: [county] }))
      const account = await addAccount(tx, { organization: home, role, label: 'desk', administers })
      return { role, account, organization: home, administers }
    })
  const tokenOf = (
    account: string,
    over: Partial<Parameters<typeof issueToken>[1]> = {},
    counties = [COUNTY],
  ) =>
    administer(database, (tx) =>
      issueToken(tx, { account, name: 'matrix', counties, manages: true, ...over }),
    )
  const byToken = async (name: string, who: Awaited<ReturnType<typeof enrol>>, counties = [COUNTY]) =>
    subject(name, {
      ...who,
      headers: bearer(await tokenOf(who.account, {}, counties)),
      here: counties.includes(COUNTY),
    })

  const { reviewer, firm, rival, agent } = people
  const own = async (name: string, who: typeof reviewer) =>
    subject(name, {
      role: who.role,
      account: who.account,
      organization: who.organization,
      headers: bearer(await tokenOf(who.account)),
    })
  for (const { account, role } of [reviewer, firm, agent]) {
    must(await setPassword(database, { account, name: `${role}.session`, password: PASSWORD }))
  }
  const bySession = async (who: typeof reviewer, over: Partial<Subject> = {}, site = 'same-origin') => {
    const name = `${who.role}.session`
    const { account } = who
    const { secret } = must(
      await signIn(services, { name, password: PASSWORD, address: '192.0.2.1', browser: null }),
    )
    const headers = { cookie: `asfound_session=${secret}`, 'sec-fetch-site': site }
    return { role: who.role, account, organization: who.organization, headers, ...over }
  }
  const gone = async (name: string, over: Partial<Parameters<typeof issueToken>[1]>) =>
    subject(name, {
      role: null,
      account: '',
      organization: '',
      headers: bearer(await tokenOf(firm.account, over)),
    })

  const suspended = await enrol({ role: 'firm', organization: firm.organization })
  const suspendedToken = await tokenOf(suspended.account)
  const withdrawn = await tokenOf(firm.account, { name: 'to be withdrawn' })
  const shut = await enrol({ role: 'firm' })
  const shutOut = { ...(await byToken('firm that was shut out', shut)), here: false }
  await administer(database, async (tx) => {
    const now = new Date()
    await tx.updateTable('account').set({ suspended_at: now }).where('id', '=', suspended.account).execute()
    await tx
      .updateTable('access_token')
      .set({ revoked_at: now })
      .where('name', '=', 'to be withdrawn')
      .execute()
    await tx
      .updateTable('admission')
      .set({ withdrawn_at: now })
      .where('organization', '=', shut.organization)
      .execute()
  })
  const nobody = { role: null, account: '', organization: '' }

  return [
    await own('reviewer', reviewer),
    await byToken(
      'reviewer who looks after the department',
      await enrol({ role: 'reviewer', organization: reviewer.organization, administers: true }),
    ),
    await own('firm', firm),
    await byToken(
      'firm, who looks after it',
      await enrol({ role: 'firm', organization: firm.organization, administers: true }),
    ),
    await own('another firm', rival),
    await own('agent', agent),
    await byToken(
      'another agent, who looks after its office',
      await enrol({ role: 'agent', administers: true }),
    ),
    await byToken(
      'reviewer of another county',
      await enrol({ role: 'reviewer', county: 'elsewhere', administers: true }),
      ['elsewhere'],
    ),
    await byToken(
      'firm of another county',
      await enrol({ role: 'firm', county: 'elsewhere', administers: true }),
      ['elsewhere'],
    ),
    shutOut,
    subject('firm’s token that only reads', {
      role: 'firm',
      account: firm.account,
      organization: firm.organization,
      headers: bearer(await tokenOf(firm.account, { writes: [], manages: false })),
      manages: false,
      writes: false,
    }),
    subject('reviewer by a session', await bySession(reviewer)),
    subject('firm by a session', await bySession(firm)),
    subject('agent by a session', await bySession(agent)),
    subject('agent’s session, from a page of another site', {
      ...(await bySession(agent, { crossSite: true }, 'cross-site')),
      role: 'agent',
    }),
    await gone('expired token', { expiresAt: new Date(Date.now() - 1_000) }),
    subject('suspended account', { ...nobody, headers: bearer(suspendedToken) }),
    subject('withdrawn token', { ...nobody, headers: bearer(withdrawn) }),
    subject('nobody', { ...nobody, headers: {} }),
  ]
}
