import { sql } from 'kysely'
import { addAccount, addCounty, addOrganization, issueToken } from '../../store/access/enrol.ts'
import { countyById } from '../../store/counties.ts'
import type { Person, Role } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { administer } from '../../store/database/transact.ts'
import { FIRMS, type FirmName } from './story.ts'

/** The invented county. */
export const COUNTY = {
  id: 'quillback',
  name: 'Quillback County',
  rulePack: 'quillback/code',
  parcelFormat: { groups: [2, 4, 4], separator: '-', example: '07-0412-0031' },
} as const

/** Who works with the county's files. */
export type Cast = {
  readonly reviewer: Person
  readonly firms: { readonly [F in FirmName]: Person }
  readonly agent: Person
}

/** Held while the county is being set up, so that two starts at once set it up once. */
export const holdDemonstration = (tx: Tx) =>
  sql`select pg_advisory_xact_lock(hashtext('demonstration'))`.execute(tx)

/** The county with its health department, its three firms and a title desk; what is there already stays. */
export const enrolCast = (database: Database): Promise<Cast> =>
  administer(database, async (tx) => {
    await holdDemonstration(tx)
    if (!(await countyById(tx, COUNTY.id))) await addCounty(tx, COUNTY)
    const firm = (name: FirmName) => person(tx, 'firm', 'firm', FIRMS[name], 'field crew')
    return {
      reviewer: await person(
        tx,
        'reviewer',
        'county',
        'Quillback County Health Department',
        'records review',
      ),
      firms: {
        upland: await firm('upland'),
        lowland: await firm('lowland'),
        lakeside: await firm('lakeside'),
      },
      agent: await person(tx, 'agent', 'agent', 'Crossroads Title Desk', 'front desk'),
    }
  })

async function person(
  tx: Tx,
  role: Role,
  kind: 'county' | 'firm' | 'agent',
  name: string,
  label: string,
): Promise<Person> {
  const known = await tx
    .selectFrom('organization')
    .innerJoin('account', 'account.organization', 'organization.id')
    .select(['organization.id as organization', 'account.id as account'])
    .where('organization.kind', '=', kind)
    .where('organization.name', '=', name)
    .where('account.label', '=', label)
    .executeTakeFirst()
  if (known) return { ...known, role, county: COUNTY.id }
  const organization = await addOrganization(tx, { kind, name, counties: [COUNTY.id] })
  const account = await addAccount(tx, { organization, role, label, administers: true })
  return { organization, account, role, county: COUNTY.id }
}

/** How long a token of the demonstration is good for. */
const TOKEN_DAYS = 30

/** A new token for one of the cast; only its hash is kept. */
export const tokenFor = (database: Database, { account }: Person, now: Date): Promise<string> =>
  administer(database, (tx) =>
    issueToken(tx, {
      account,
      name: `demonstration, ${now.toISOString().slice(0, 16)}`,
      counties: [COUNTY.id],
      expiresAt: new Date(now.getTime() + TOKEN_DAYS * 86_400_000),
    }),
  )
