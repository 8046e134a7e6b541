import type { Tx } from '../database/database.ts'

/** At the door: nobody reads a shared secret in their own name. */

export type SecondStep = {
  readonly sealedSecret: Buffer
  readonly confirmedAt: Date | null
  /** The last step of time of which a code was taken. */
  readonly lastStep: number
}

export async function secondStepOf(tx: Tx, account: string): Promise<SecondStep | undefined> {
  return tx
    .selectFrom('second_step')
    .select(['sealed_secret as sealedSecret', 'confirmed_at as confirmedAt', 'last_step as lastStep'])
    .where('account', '=', account)
    .executeTakeFirst()
}

/** A secret that is not confirmed yet, in place of another such; false where a confirmed one stands. */
export async function offerSecret(tx: Tx, account: string, sealedSecret: Buffer): Promise<boolean> {
  const row = { sealed_secret: sealedSecret, last_step: 0 }
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto('second_step')
    .values({ account, ...row })
    .onConflict((conflict) =>
      conflict.column('account').doUpdateSet(row).where('second_step.confirmed_at', 'is', null),
    )
    .executeTakeFirst()
  return (numInsertedOrUpdatedRows ?? 0n) > 0n
}

/** Takes a code's step of time, once: false where that step or a later one was taken before, by whoever was first. */
export async function takeStep(tx: Tx, account: string, step: number): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('second_step')
    .set({ last_step: step })
    .where('account', '=', account)
    .where('last_step', '<', step)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

export async function confirmSecret(tx: Tx, account: string, at: Date): Promise<void> {
  await tx.updateTable('second_step').set({ confirmed_at: at }).where('account', '=', account).execute()
}

export async function removeSecondStep(tx: Tx, account: string): Promise<void> {
  await tx.deleteFrom('recovery_code').where('account', '=', account).execute()
  await tx.deleteFrom('second_step').where('account', '=', account).execute()
}

/** In place of those there were. */
export async function replaceRecoveryCodes(
  tx: Tx,
  account: string,
  hashes: readonly Buffer[],
): Promise<void> {
  await tx.deleteFrom('recovery_code').where('account', '=', account).execute()
  await tx
    .insertInto('recovery_code')
    .values(hashes.map((hash) => ({ account, hash })))
    .execute()
}

/** Uses a recovery code up; false where there is none like it, or it was used. */
export async function useRecoveryCode(tx: Tx, account: string, hash: Buffer, at: Date): Promise<boolean> {
  const { numUpdatedRows } = await tx
    .updateTable('recovery_code')
    .set({ used_at: at })
    .where('account', '=', account)
    .where('hash', '=', hash)
    .where('used_at', 'is', null)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

export async function recoveryCodesLeft(tx: Tx, account: string): Promise<number> {
  const { count } = await tx
    .selectFrom('recovery_code')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('account', '=', account)
    .where('used_at', 'is', null)
    .executeTakeFirstOrThrow()
  return count
}
