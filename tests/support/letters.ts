import { afterAll } from 'vitest'
import { type Letters, openLetters } from '../../src/letters/letters.ts'
import { newKeyPem } from '../../src/letters/signing/key-source.ts'
import type { Database } from '../../src/store/database/database.ts'
import { administer } from '../../src/store/database/transact.ts'
import { registerSigningKey } from '../../src/store/signing-keys.ts'

export const PUBLIC_ADDRESS = 'https://records.quillback.example'

/** A press and a key of the test file's own; the key is known to the database. */
export async function testLetters(database: Database, pem = newKeyPem()): Promise<Letters> {
  const letters = await openLetters({ pem, file: undefined, dataFolder: '' }, PUBLIC_ADDRESS)
  await administer(database, (tx) => registerSigningKey(tx, letters.signer.publicKey, new Date()))
  afterAll(letters.close)
  return letters
}
