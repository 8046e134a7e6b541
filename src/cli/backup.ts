/**
 * `npm run backup -- FILE`: everything in one file, while the service runs. Compressed where the name ends in `.gz`. The
 * file appears under its name when it is whole and on the disk, readable by its owner alone.
 */
import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { PassThrough } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { createGzip } from 'node:zlib'
import manifest from '../../package.json' with { type: 'json' }
import { openArchive } from '../backup/archive-writer.ts'
import { BackupRefusal } from '../backup/backup-refusal.ts'
import type { Manifest } from '../backup/manifest.ts'
import { writeBackup } from '../backup/write-backup.ts'
import { settingsOrExit } from '../config.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'
import { keysApart } from './keys-apart.ts'

const settings = settingsOrExit()
try {
  const [file] = parseArgs({ allowPositionals: true }).positionals
  if (file === undefined) throw new BackupRefusal('Name the file to write: npm run backup -- FILE')
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble: (message) => console.error(message),
  })
  const written = await write(server.url, path.resolve(file))
  server.release()
  tell(file, written)
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}

async function write(url: string, file: string): Promise<Manifest> {
  const draft = `${file}.draft`
  const archive = openArchive()
  const into = createWriteStream(draft, { mode: 0o600, flush: true })
  const squeeze = file.endsWith('.gz') ? createGzip({ level: 1 }) : new PassThrough()
  const source = {
    url,
    originals: path.join(settings.ASFOUND_DATA, 'originals'),
    program: `${manifest.name} ${manifest.version}`,
    clock: () => new Date(),
  }
  try {
    const flowing = pipeline(archive.stream, squeeze, into)
    const filling = writeBackup(source, archive).catch((fault: Error) => {
      archive.stream.destroy(fault)
      throw fault
    })
    const [written] = await Promise.all([filling, flowing])
    await rename(draft, file)
    return written
  } catch (fault) {
    await rm(draft, { force: true })
    throw fault
  }
}

function tell(file: string, { tables, jobs, originals, heads, broken = [] }: Manifest): void {
  for (const [name, { rows }] of Object.entries(tables)) if (rows > 0) console.log(`${name}: ${rows}`)
  console.log(`jobs waiting: ${jobs}`)
  console.log(`originals: ${originals.count}, ${originals.bytes} bytes`)
  console.log(`audit chains: ${heads.length}`)
  for (const hash of originals.missing)
    console.error(`WRONG  the original ${hash} is on record but missing from the folder`)
  for (const hash of originals.damaged)
    console.error(`WRONG  the original ${hash} has changed since it was stored`)
  for (const fault of broken) console.error(`WRONG  ${fault}`)
  if (originals.missing.length + originals.damaged.length + broken.length > 0) process.exitCode = 1
  console.log(`Written to ${file}.`)
  if (broken.length > 0)
    console.error(
      'The audit chains are not intact. Keep earlier backups: this one can only be restored with --broken.',
    )
  console.log('NOT in the backup, and needed after a restore. Keep a copy of each in another place:')
  for (const { from, needed, there } of keysApart(settings))
    console.log(`  ${from}${there ? '' : ' (not there yet)'}: ${needed}`)
}
