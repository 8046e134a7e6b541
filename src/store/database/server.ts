import pg from 'pg'
import { outsideIfGone } from './database-fault.ts'
import { holdEmbeddedServer } from './embedded/hold.ts'

export type ReachedServer = {
  readonly url: string
  readonly says: string
  /** Lets go of the embedded server, which stops when nobody holds it; nothing for one that was given. */
  readonly release: () => void
}

type Options = {
  readonly url: string | undefined
  readonly dataFolder: string
  readonly onTrouble: (message: string) => void
}

const DATABASE = 'asfound'

/** The PostgreSQL that was given, or our own in the data folder. Throws OutsideFailure when that can't run here. */
export async function reachServer({ url, dataFolder, onTrouble }: Options): Promise<ReachedServer> {
  if (url !== undefined) return { url, says: 'the PostgreSQL of DATABASE_URL', release: () => {} }
  const held = await holdEmbeddedServer({ dataFolder, onTrouble })
  try {
    await ensureDatabase(held.url('postgres'))
  } catch (fault) {
    held.release()
    throw outsideIfGone(fault)
  }
  return { url: held.url(DATABASE), says: `the embedded PostgreSQL in ${dataFolder}`, release: held.release }
}

async function ensureDatabase(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  await client.connect()
  try {
    const { rowCount } = await client.query('select from pg_database where datname = $1', [DATABASE])
    if (rowCount === 0) await client.query(`create database ${DATABASE} template template0`)
  } catch (fault) {
    // Another process made it at the same moment: as a name that is taken, or as a row that is.
    if (!['42P04', '23505'].includes((fault as { code?: string }).code ?? '')) throw fault
  } finally {
    await client.end()
  }
}
