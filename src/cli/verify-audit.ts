/**
 * `npm run audit:verify`: follows the audit chains and compares every record with what was last said of it. Exits with 1
 * and names what is wrong when anything is. `--note FILE` keeps where the chains end, to be stored elsewhere;
 * `--against FILE` asks whether they still hold what was noted.
 */
import { existsSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { parseArgs } from 'node:util'
import pg from 'pg'
import { OutsideFailure } from '../base/outside-failure.ts'
import { type Settings, settingsOrExit } from '../config.ts'
import { OWN_KEY_FILE, signingKey } from '../letters/signing/key-source.ts'
import { chainName } from '../store/audit/entry.ts'
import type { Head } from '../store/audit/head.ts'
import { type KnownBreak, knownBreaks } from '../store/audit/known-breaks.ts'
import { readHeads, sealHeads } from '../store/audit/seal-heads.ts'
import { type AuditReport, verifyAudit } from '../store/audit/verify-audit.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'

const settings = settingsOrExit()
const { values: asked } = parseArgs({ options: { note: { type: 'string' }, against: { type: 'string' } } })
try {
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const { known, ...report } = await verify(server.url)
  server.release()
  for (const { county, number, hash } of report.heads)
    console.log(`${chainName(county)}: ${number} entries, the last ${hash}`)
  for (const { says, since } of known) console.error(`KNOWN  since the restore of ${since}: ${says}`)
  const fresh = report.faults.filter((fault) => !known.some(({ says }) => says === fault))
  for (const fault of fresh) console.error(`WRONG  ${fault}`)
  if (report.faults.length + known.length > 0) process.exitCode = 1
  else console.log('All entries follow each other, and no record was changed afterward.')
  if (asked.note !== undefined && report.faults.length === 0) await note(asked.note, report.heads)
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}

async function verify(url: string): Promise<AuditReport & { readonly known: readonly KnownBreak[] }> {
  const client = new pg.Client({ connectionString: url, application_name: 'asfound audit' })
  client.on('error', () => {})
  await client.connect()
  try {
    await client.query('begin isolation level repeatable read read only')
    const against = asked.against === undefined ? [] : await noted(client, asked.against)
    return { ...(await verifyAudit(client, against)), known: await knownBreaks(client) }
  } finally {
    await client.end()
  }
}

async function noted(client: pg.Client, file: string): Promise<readonly Head[]> {
  const { rows } = await client.query<{ key: object }>('select public_jwk as key from signing_key')
  const keys = { keys: rows.map(({ key }) => key) as never }
  const text = await readFile(file, 'utf8')
  // One note as --note writes it, or a line for each as the service adds them.
  const notes = text.startsWith('{\n') ? [text] : text.trim().split('\n')
  const heads: Head[] = []
  for (const note of notes) {
    const read = await readHeads(note, keys)
    if (!read.ok) throw new OutsideFailure(`${file}: ${read.error}`)
    heads.push(...read.value.heads)
  }
  return heads
}

async function note(file: string, heads: readonly Head[]): Promise<void> {
  const key = await keyOf(settings)
  const text = await sealHeads({ at: new Date().toISOString(), heads: [...heads] }, key)
  await writeFile(file, text, { flag: 'wx' })
  console.log(`Saved in ${file}${key === undefined ? ', not signed: there is no key here' : ', signed'}.`)
}

/** The key of the letters; none is made for this. */
async function keyOf({ ASFOUND_SIGNING_KEY: pem, ASFOUND_SIGNING_KEY_FILE: file, ASFOUND_DATA }: Settings) {
  const own = existsSync(path.join(ASFOUND_DATA, OWN_KEY_FILE))
  if (pem === undefined && file === undefined && !own) return undefined
  return signingKey({ pem, file, dataFolder: ASFOUND_DATA })
}
