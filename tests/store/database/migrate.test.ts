import { mkdtemp, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { describe, expect, test } from 'vitest'
import { OutsideFailure } from '../../../src/base/outside-failure.ts'
import {
  type Migration,
  MigrationRefusal,
  migrate,
  readMigrations,
} from '../../../src/store/database/migrate.ts'
import { emptyDatabase } from '../../support/database.ts'

const migration = (number: number, sql: string): Migration => ({
  number,
  name: `000${number}-test.sql`,
  sql,
  checksum: `checksum of ${sql}`,
})
const FIRST = migration(1, 'create table one (a integer)')
const SECOND = migration(2, 'create table two (b integer); insert into two values (2)')

async function query(url: string, text: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query(text)).rows
  } finally {
    await client.end()
  }
}

describe('migrate', () => {
  test('runs what is waiting, in order, once', async () => {
    const url = await emptyDatabase()
    expect(await migrate(url, [FIRST])).toEqual(['0001-test.sql'])
    expect(await migrate(url, [FIRST, SECOND])).toEqual(['0002-test.sql'])
    expect(await migrate(url, [FIRST, SECOND])).toEqual([])
    expect(await query(url, 'select b from two')).toEqual([{ b: 2 }])
  })

  test('is safe when many processes start at once: each migration runs once', async () => {
    const url = await emptyDatabase()
    const slow = migration(1, 'select pg_sleep(0.1); create table one (a integer)')
    const ran = await Promise.all(Array.from({ length: 6 }, () => migrate(url, [slow, SECOND])))
    expect(ran.flat()).toEqual(['0001-test.sql', '0002-test.sql'])
  })

  test('refuses a database that is newer, and leaves it as it is', async () => {
    const url = await emptyDatabase()
    await migrate(url, [FIRST, SECOND])
    const older = migrate(url, [FIRST])
    await expect(older).rejects.toBeInstanceOf(MigrationRefusal)
    await expect(older).rejects.toThrow(/newer than this version.*0002-test\.sql.*ends with 0001-test\.sql/)
    expect(await query(url, 'select count(*)::int as n from migration')).toEqual([{ n: 2 }])
  })

  test('refuses when a migration that ran was edited', async () => {
    const url = await emptyDatabase()
    await migrate(url, [FIRST])
    const edited = { ...FIRST, checksum: 'another' }
    await expect(migrate(url, [edited, SECOND])).rejects.toThrow(/0001-test\.sql has changed since it ran/)
    expect(await query(url, `select to_regclass('two') as two`)).toEqual([{ two: null }])
  })

  test('a migration that fails is undone whole; those before it stay', async () => {
    const url = await emptyDatabase()
    const broken = migration(2, 'create table half (a integer); select 1 / 0')
    await expect(migrate(url, [FIRST, broken])).rejects.toThrow(
      /Migration 0002-test\.sql failed: division by zero/,
    )
    expect(await query(url, `select to_regclass('half') as half, to_regclass('one')::text as one`)).toEqual([
      { half: null, one: 'one' },
    ])
    expect(await migrate(url, [FIRST, SECOND])).toEqual(['0002-test.sql'])
  })

  test('a database that is not there is an outside failure', async () => {
    await expect(migrate('postgresql://a@127.0.0.1:1/b', [FIRST])).rejects.toBeInstanceOf(OutsideFailure)
  })
})

describe('the files of migrations', () => {
  test('are numbered without a gap, and their checksums don’t depend on line ends', async () => {
    const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-migrations-'))
    await writeFile(path.join(folder, '0001-first.sql'), 'select 1;\r\nselect 2;\r\n')
    const [windows] = await readMigrations(folder)
    await writeFile(path.join(folder, '0001-first.sql'), 'select 1;\nselect 2;\n')
    const [unix] = await readMigrations(folder)
    expect(windows?.checksum).toBe(unix?.checksum)
    await writeFile(path.join(folder, '0003-third.sql'), '')
    await expect(readMigrations(folder)).rejects.toThrow('0003-third.sql: expected 0002-what-it-does.sql')
  })
})
