/**
 * `npm run letter:keys`: the keys that seal letters. `-- rotate` makes a new one of the service's own; `-- retire KID`
 * lets one sign no more. Letters that a retired key has sealed stay valid: its public half stays published.
 */
import { parseArgs } from 'node:util'
import { settingsOrExit } from '../config.ts'
import { replaceOwnKey } from '../letters/signing/replace-own-key.ts'
import { openSigner } from '../letters/signing/signer.ts'
import { type Database, openDatabase } from '../store/database/database.ts'
import { reachServer } from '../store/database/server.ts'
import { administer } from '../store/database/transact.ts'
import { registerSigningKey, retireSigningKey, signingKeys } from '../store/signing-keys.ts'
import { explain } from './explain.ts'

const USAGE = 'npm run letter:keys, npm run letter:keys -- rotate, or npm run letter:keys -- retire KID'
const settings = settingsOrExit()

async function list(database: Database): Promise<void> {
  const keys = await administer(database, signingKeys)
  if (keys.length === 0) console.log('No key is published yet. The first start of the service publishes one.')
  for (const { key, firstUsedAt, retiredAt } of keys) {
    const state = retiredAt ? `retired ${retiredAt.toISOString()}` : 'may sign'
    console.log(`${key.kid}  since ${firstUsedAt.toISOString()}  ${state}`)
  }
}

async function rotate(database: Database): Promise<void> {
  if (settings.ASFOUND_SIGNING_KEY ?? settings.ASFOUND_SIGNING_KEY_FILE) {
    throw new Error(
      'The key comes from ASFOUND_SIGNING_KEY or ASFOUND_SIGNING_KEY_FILE. Put the new key there, restart the ' +
        'service, then retire the old key.',
    )
  }
  const old = (await administer(database, signingKeys)).filter(({ retiredAt }) => retiredAt === null)
  const tag = new Date().toISOString().replaceAll(/[:.]/g, '-')
  const { key, oldFile } = await replaceOwnKey(settings.ASFOUND_DATA, tag)
  const { publicKey } = await openSigner(key)
  await administer(database, (tx) => registerSigningKey(tx, publicKey, new Date()))
  console.log(`The new key ${publicKey.kid} is published.`)
  if (oldFile) console.log(`The old key is in ${oldFile}. Destroy it once the service runs with the new one.`)
  console.log('Now restart the service. When every process runs with the new key, retire the old ones:')
  for (const { key: before } of old) console.log(`  npm run letter:keys -- retire ${before.kid}`)
}

async function retire(database: Database, kid: string): Promise<void> {
  const done = await administer(database, (tx) => retireSigningKey(tx, kid, new Date()))
  if (!done) throw new Error(`There is no active key ${kid}.`)
  console.log(`${kid} is retired. Its letters stay valid.`)
}

try {
  const { positionals } = parseArgs({ allowPositionals: true })
  const [command = 'list', kid, ...rest] = positionals
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const database = openDatabase({ url: server.url, maxConnections: 2, onTrouble: () => {} })
  try {
    if (command === 'list' && kid === undefined) await list(database)
    else if (command === 'rotate' && kid === undefined) await rotate(database)
    else if (command === 'retire' && kid !== undefined && rest.length === 0) await retire(database, kid)
    else throw new Error(`Write: ${USAGE}`)
  } finally {
    await database.close()
    server.release()
  }
} catch (fault) {
  if (fault instanceof Error && fault.constructor === Error) console.error(fault.message)
  else explain(fault)
  process.exitCode = 1
}
