import type { Tx } from '../database/database.ts'

/** Removes what says who an account's person is, or lets them in. At the door. */
export async function erasePersonal(tx: Tx, account: string, tokens: readonly string[]): Promise<void> {
  await tx.deleteFrom('recovery_code').where('account', '=', account).execute()
  await tx.deleteFrom('second_step').where('account', '=', account).execute()
  await tx.deleteFrom('outside_identity').where('account', '=', account).execute()
  await tx.deleteFrom('invitation').where('account', '=', account).execute()
  await tx.deleteFrom('session').where('account', '=', account).execute()
  await tx.deleteFrom('sign_in').where('account', '=', account).execute()
  for (const id of tokens) {
    await tx
      .updateTable('access_token')
      .set({ name: `withdrawn token ${id.slice(-4)}` })
      .where('id', '=', id)
      .execute()
  }
}
