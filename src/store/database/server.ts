import pg from 'pg'
import { outsideIfGone } from './database-fault.ts'
import { holdEmbeddedServer } from './embedded/hold.ts'
import { giveToPlainOwner, makePlainOwner, PLAIN_OWNER } from './plain-owner.ts'

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
    await ensureDatabase(held.url('postgres'), held.url(DATABASE))
  } catch (fault) {
    held.release()
    throw outsideIfGone(fault)
  }
  return {
    url: held.url(DATABASE, PLAIN_OWNER),
    says: `the embedded PostgreSQL in ${dataFolder}`,
    release: held.release,
  }
}

/** Made for a plain owner, who is who the service comes in as; one of an earlier version is given to them. */
async function ensureDatabase(server: string, own: string): Promise<void> {
  await asSuperuser(server, async (client) => {
    await makePlainOwner(client, decodeURIComponent(new URL(server).password))
    const { rowCount } = await client.query('select from pg_database where datname = $1', [DATABASE])
    if (rowCount === 0)
      await client.query(`create database ${DATABASE} owner ${PLAIN_OWNER} template template0`)
  })
  await asSuperuser(own, async (client) => {
    const { rows } = await client.query<{ plain: boolean }>(
      `select pg_get_userbyid(datdba) = '${PLAIN_OWNER}' as plain from pg_database where datname = $1`,
      [DATABASE],
    )
    if (!rows[0]?.plain) await giveToPlainOwner(client, DATABASE)
  })
}

async function asSuperuser(url: string, work: (client: pg.Client) => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  await client.connect()
  try {
    await work(client)
  } catch (fault) {
    // Another process made it at the same moment: as a name that is taken, or as a row that is, or one that changed.
    if (!['42P04', '23505', '42710', 'XX000'].includes((fault as { code?: string }).code ?? '')) throw fault
  } finally {
    await client.end()
  }
}
