import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'
import { newId } from '../new-id.ts'
import { newToken, tokenHash } from './token.ts'

/** Setting up who works with the service. All of it is the owner's: call it inside `administer`. */

type NewCounty = {
  readonly id: string
  readonly name: string
  readonly rulePack: string
  readonly parcelFormat: unknown
}

export async function addCounty(tx: Tx, { id, name, rulePack, parcelFormat }: NewCounty): Promise<void> {
  const row = { id, name, rule_pack: rulePack, parcel_format: JSON.stringify(parcelFormat) }
  await tx.insertInto('county').values(row).execute()
}

type NewOrganization = {
  readonly kind: 'county' | 'firm' | 'agent'
  readonly name: string
  /** Where it is admitted; for a county's department, its county. */
  readonly counties: readonly string[]
  /** Whether its people must give a one-time code after their password. */
  readonly secondStep?: 'offered' | 'required'
}

export async function addOrganization(
  tx: Tx,
  { kind, name, counties, secondStep = 'offered' }: NewOrganization,
): Promise<string> {
  const id = newId()
  await tx.insertInto('organization').values({ id, kind, name, second_step: secondStep }).execute()
  for (const county of counties) {
    await tx.insertInto('admission').values({ county, organization: id, admitted_by: null }).execute()
  }
  return id
}

type NewAccount = {
  readonly organization: string
  readonly role: Role
  /** What the account is for ("front desk"), not who sits there. */
  readonly label: string
  readonly administers?: boolean
}

export async function addAccount(
  tx: Tx,
  { organization, role, label, administers = false }: NewAccount,
): Promise<string> {
  const id = newId()
  await tx.insertInto('account').values({ id, organization, role, label, administers }).execute()
  return id
}

type NewToken = {
  readonly account: string
  readonly name: string
  /** Where it may read. */
  readonly counties: readonly string[]
  /** Where among these it may write; everywhere, unless said. */
  readonly writes?: readonly string[]
  /** Whether it may manage the people, tokens and sessions that its account may. */
  readonly manages?: boolean
  readonly expiresAt?: Date
}

/** Returns the token itself, this once; only its hash is kept. */
export async function issueToken(
  tx: Tx,
  { account, name, counties, writes = counties, manages = false, expiresAt }: NewToken,
): Promise<string> {
  const token = newToken()
  await tx
    .insertInto('access_token')
    .values({
      id: newId(),
      account,
      name,
      hash: tokenHash(token),
      counties: [...counties],
      writes: [...writes],
      manages,
      issued_by: null,
      expires_at: expiresAt,
    })
    .execute()
  return token
}
