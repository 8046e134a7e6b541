import { uuidv7 } from 'uuidv7'
import type { Role } from '../database/actor.ts'
import type { Tx } from '../database/database.ts'
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

export async function addOrganisation(
  tx: Tx,
  kind: 'county' | 'firm' | 'agent',
  name: string,
): Promise<string> {
  const id = uuidv7()
  await tx.insertInto('organisation').values({ id, kind, name }).execute()
  return id
}

/** `label` says what the account is for ("front desk"), not who sits there. */
export async function addAccount(tx: Tx, organisation: string, role: Role, label: string): Promise<string> {
  const id = uuidv7()
  await tx.insertInto('account').values({ id, organisation, role, label }).execute()
  return id
}

type NewToken = {
  readonly account: string
  readonly name: string
  readonly counties: readonly string[]
  readonly expiresAt?: Date
}

/** Returns the token itself, this once; only its hash is kept. */
export async function issueToken(tx: Tx, { account, name, counties, expiresAt }: NewToken): Promise<string> {
  const token = newToken()
  await tx
    .insertInto('access_token')
    .values({
      id: uuidv7(),
      account,
      name,
      hash: tokenHash(token),
      counties: [...counties],
      expires_at: expiresAt,
    })
    .execute()
  return token
}
