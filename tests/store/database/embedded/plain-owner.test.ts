import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, expect, test, vi } from 'vitest'
import { prepareDatabase } from '../../../../src/jobs/prepare-database.ts'
import { holdEmbeddedServer } from '../../../../src/store/database/embedded/hold.ts'
import { reachServer } from '../../../../src/store/database/server.ts'

const dataFolder = await mkdtemp(path.join(os.tmpdir(), 'asfound-owner-'))
const held = await holdEmbeddedServer({ dataFolder, lingerMs: 200 })
afterAll(async () => {
  held.release()
  const gone = () =>
    rm(dataFolder, { recursive: true }).then(
      () => true,
      () => false,
    )
  await vi.waitUntil(gone, { timeout: 20_000, interval: 200 })
})

async function ask(url: string, ...statements: string[]): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    let rows: Record<string, unknown>[] = []
    for (const statement of statements) rows = (await client.query(statement)).rows
    return rows
  } finally {
    await client.end()
  }
}

test('the embedded server is entered as nobody above the service’s own tables, whoever resets what', async () => {
  // As an earlier version left it: a database of the superuser's, with everything in it.
  await ask(held.url('postgres'), 'create database asfound template template0')
  await prepareDatabase(held.url('asfound'))
  const { url, release } = await reachServer({ url: undefined, dataFolder, onTrouble: () => {} })
  try {
    const superuser = `select current_setting('is_superuser') as it, current_user::text as who`
    expect(await ask(url, 'set role asfound_service', 'reset role', superuser)).toEqual([
      { it: 'off', who: 'asfound_owner' },
    ])
    await expect(ask(url, `select pg_read_file('/etc/passwd')`)).rejects.toThrow(/permission denied/)
    await expect(ask(url, 'set role postgres')).rejects.toThrow(/permission denied/)
    // What lay there is theirs, and is brought up to date by them.
    const foreign = `select c.relname from pg_class c where relnamespace::regnamespace::text in ('public', 'pgboss')
      and relkind in ('r', 'p', 'v', 'S') and pg_get_userbyid(relowner) <> 'asfound_owner'`
    expect(await ask(url, foreign)).toEqual([])
    await prepareDatabase(url)
    expect(
      await ask(url, 'begin', 'set local role asfound_service', 'select count(*)::int as n from county'),
    ).toEqual([{ n: 0 }])
    await ask(url, 'create table later (n integer)', 'alter table county add column later text')
  } finally {
    release()
  }
}, 90_000)
