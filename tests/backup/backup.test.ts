import { randomBytes } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { gzipSync } from 'node:zlib'
import pg from 'pg'
import { afterAll, describe, expect, test } from 'vitest'
import { openArchive } from '../../src/backup/archive-writer.ts'
import type { Manifest } from '../../src/backup/manifest.ts'
import { restoreBackup } from '../../src/backup/restore-backup.ts'
import { writeBackup } from '../../src/backup/write-backup.ts'
import { enrolCast } from '../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../src/cli/demonstration/load.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import { openOriginals } from '../../src/files/originals.ts'
import { openJobs } from '../../src/jobs/start.ts'
import { openDatabase } from '../../src/store/database/database.ts'
import { transact } from '../../src/store/database/transact.ts'
import { recordEvent } from '../../src/store/events.ts'
import { testApp } from '../support/app.ts'
import { emptyDatabase, onServer } from '../support/database.ts'
import { newParcel, permit1974 } from '../support/quillback.ts'

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-backup-'))
afterAll(() => rm(folder, { recursive: true }))
const file = (name: string) => path.join(folder, name)

/** A county as it is after years: every story, a paper's bytes, and two jobs that nobody has done yet. */
const { services, url, people, ask } = await testApp()
await loadStories(services, await enrolCast(services.database), readStories())
const originals = file('originals')
const kept = await openOriginals(originals)
const paper = await kept.keep(Readable.from([randomBytes(3_000_000)]))
const small = await kept.keep(Readable.from([Buffer.from('abc')]))
const queue = await openJobs({
  url,
  database: services.database,
  clock: services.clock,
  newId: services.newId,
  atOnce: 1,
  onTrouble: () => {},
})
afterAll(() => queue.stop(1_000))
const jobs = await transact(services.database, people.reviewer, async (tx) => {
  const document = services.newId()
  const row = {
    county: 'quillback',
    id: document,
    content_hash: paper.hash,
    media_type: 'application/pdf',
    bytes: paper.bytes,
    state: 'received' as const,
    received_by: people.reviewer.account,
  }
  await tx
    .insertInto('document')
    .values({ ...row, parcel: null, file_name: 'a\tb\\c\nd', pages: null, reason: null })
    .execute()
  return [
    await queue.enqueue(tx, people.reviewer, 'read-document', { document }),
    await queue.enqueue(tx, people.firm, 'reconcile-parcel', { parcel: services.newId(), occasion: 'test' }),
  ]
})

async function backUp(into: string, from = { url, originals }): Promise<Manifest> {
  const archive = openArchive()
  const flowing = pipeline(archive.stream, createWriteStream(into))
  const filling = writeBackup({ ...from, program: 'asfound tests', clock: services.clock }, archive)
  const [manifest] = await Promise.all([filling, flowing])
  return manifest
}

async function rows<T extends object>(at: string, query: string): Promise<readonly T[]> {
  const client = new pg.Client({ connectionString: at })
  await client.connect()
  try {
    return (await client.query<T>(query)).rows
  } finally {
    await client.end()
  }
}

const whole = file('whole.tar')
const manifest = await backUp(whole)
const bytes = await readFile(whole)
let folders = 0
const newTarget = async () => ({ url: await emptyDatabase(), originals: file(`originals-${++folders}`) })

describe('a backup', () => {
  test('says what is in it', () => {
    expect(manifest.tables.parcel!.rows).toBeGreaterThan(50)
    expect(manifest.tables.reconciliation!.rows).toBeGreaterThan(100)
    expect(manifest.jobs).toBe(2)
    expect(manifest.originals).toMatchObject({ count: 2, bytes: 3_000_003, missing: [], damaged: [] })
    expect(manifest.heads.map(({ county }) => county).sort()).toEqual(['*', 'elsewhere', 'quillback'])
  })

  test('put into an empty database is the same to the last row, with its jobs and originals', async () => {
    const target = await newTarget()
    const restored = await restoreBackup(whole, target)
    expect(restored.manifest).toEqual(manifest)
    const again = await backUp(file('again.tar'), target)
    expect(again).toEqual(manifest)
    const files = await openOriginals(target.originals)
    expect(await files.pathOf(small.hash)).toBeDefined()
    const left = await rows<{ id: string }>(
      target.url,
      `select id from pgboss.job where state = 'created' order by 1`,
    )
    expect(left.map(({ id }) => id)).toEqual([...jobs].sort())
  })

  test('goes on where it was left: its jobs run, its chain grows, its triggers watch', async () => {
    const target = await newTarget()
    await restoreBackup(whole, target)
    const database = openDatabase({ url: target.url, maxConnections: 4, onTrouble: () => {} })
    const [before] = await rows<{ n: string }>(
      target.url,
      `select max(number) as n from audit where county = 'quillback'`,
    )
    const ran: string[] = []
    const worker = await openJobs({
      url: target.url,
      database,
      clock: services.clock,
      newId: services.newId,
      atOnce: 1,
      onTrouble: () => {},
    })
    await worker.work({
      'read-document': async ({ id }) => void ran.push(id),
      'reconcile-parcel': async ({ id }) => void ran.push(id),
    })
    await expect.poll(() => [...ran].sort(), { timeout: 20_000 }).toEqual([...jobs].sort())
    await transact(database, people.reviewer, (tx) =>
      recordEvent(tx, people.reviewer, {
        id: services.newId(),
        kind: 'test',
        subjectKind: 'parcel',
        subject: services.newId(),
        parcel: null,
        at: services.clock(),
      }),
    )
    const [after] = await rows<{ n: string }>(
      target.url,
      `select max(number) as n from audit where county = 'quillback'`,
    )
    expect(Number(after!.n)).toBe(Number(before!.n) + 1)
    await worker.stop(2_000)
    await database.close()
  })

  test('is of one moment, whatever is written meanwhile', async () => {
    let go = true
    const writing = (async () => {
      for (let at = 0; go; at++) {
        const { number } = await newParcel(services)
        const made = await ask('reviewer', {
          method: 'POST',
          url: `/v1/counties/quillback/parcels/${number}/permits`,
          body: { ...permit1974, number: `B-${at}` },
        })
        expect(made.status).toBe(201)
      }
    })()
    const moving = await backUp(file('moving.tar'))
    const later = await rows<{ n: number }>(url, 'select count(*)::int as n from permit')
    go = false
    await writing
    expect(later[0]!.n).toBeGreaterThan(moving.tables.permit!.rows)
    const target = await newTarget()
    // Proves itself: foreign keys, the chain and every record's last entry fit each other.
    expect((await restoreBackup(file('moving.tar'), target)).manifest).toEqual(moving)
    const [odd] = await rows<{ n: number }>(
      target.url,
      `select count(*)::int as n from permit p where not exists
         (select from permit_revision r where r.county = p.county and r.permit = p.id and r.revision = p.revision)`,
    )
    expect(odd!.n).toBe(0)
  })

  test('compressed reads the same', async () => {
    await writeFile(file('whole.tar.gz'), gzipSync(bytes, { level: 1 }))
    expect((await restoreBackup(file('whole.tar.gz'), await newTarget())).manifest).toEqual(manifest)
  })

  test('tells of an original that is gone, and of one whose bytes are no longer its own', async () => {
    const elsewhere = file('originals-rotten')
    const rotten = await openOriginals(elsewhere)
    const { hash } = await rotten.keep(Readable.from([Buffer.from('once')]))
    await rm((await rotten.pathOf(hash))!)
    await writeFile(path.join(elsewhere, hash.slice(0, 2), hash), 'only')
    const told = await backUp(file('rotten.tar'), { url, originals: elsewhere })
    expect(told.originals).toMatchObject({ count: 1, missing: [paper.hash], damaged: [hash] })
    const target = await newTarget()
    expect((await restoreBackup(file('rotten.tar'), target)).manifest.originals).toEqual(told.originals)
    expect(await (await openOriginals(target.originals)).pathOf(hash)).toBeUndefined()
  })

  test('goes from one kind of server to another: to a database that an ordinary user owns', async () => {
    const name = `backup_${randomBytes(4).toString('hex')}`
    const target = await newTarget()
    await onServer((client) =>
      client.query(`create role ${name} login password 'only-for-this-test' createrole`),
    )
    const there = new URL(target.url)
    const database = there.pathname.slice(1)
    await onServer((client) => client.query(`alter database ${database} owner to ${name}`))
    await rows(target.url, `alter schema public owner to ${name}`)
    await onServer((client) => client.query(`grant asfound_service to ${name}`))
    there.username = name
    there.password = 'only-for-this-test'
    const restored = await restoreBackup(whole, { ...target, url: there.href })
    expect(restored.manifest).toEqual(manifest)
    await onServer(async (client) => {
      await client.query(`drop database ${database} with (force)`)
      await client.query(`drop role ${name}`)
    })
  })
})

describe('a restore refuses, and leaves the database empty', () => {
  async function refused(name: string, content: Buffer): Promise<string> {
    await writeFile(file(name), content)
    const target = await newTarget()
    const message = await restoreBackup(file(name), target).then(
      () => 'restored',
      (fault: Error) => `${fault.name}: ${fault.message}`,
    )
    const tables = await rows<{ there: boolean }>(
      target.url,
      `select to_regclass('parcel') is not null as there`,
    )
    if (tables[0]!.there && message !== 'restored') {
      const left = await rows<{ n: number }>(target.url, 'select count(*)::int as n from parcel')
      expect(left[0]!.n).toBe(0)
    }
    return message
  }

  test('what is no backup', async () => {
    expect(await refused('nothing', Buffer.alloc(0))).toMatch(
      /^BackupRefusal: .* is no backup of this service/,
    )
    expect(await refused('noise', randomBytes(10_000))).toMatch(/^BackupRefusal/)
    expect(await refused('words', Buffer.from('x'.repeat(2_000)))).toMatch(/^BackupRefusal/)
  })

  test('a file that was cut short, wherever', async () => {
    for (const share of [0.001, 0.5, 0.999])
      expect(await refused(`cut-${share}`, bytes.subarray(0, Math.floor(bytes.length * share)))).toMatch(
        /^BackupRefusal/,
      )
    // Whole entries, and the last of them missing.
    const last = bytes.lastIndexOf('manifest.json')
    expect(await refused('cut-clean', Buffer.concat([bytes.subarray(0, last), Buffer.alloc(1024)]))).toMatch(
      /was cut short/,
    )
  })

  test('a byte that is another: in a table, in an original, in the count', async () => {
    const flipped = (at: number, to: number) => {
      const copy = Buffer.from(bytes)
      copy[at] = to
      return copy
    }
    const inTable = bytes.indexOf('07-0', bytes.indexOf('tables/parcel/'))
    expect(inTable).toBeGreaterThan(0)
    expect(await refused('table', flipped(inTable, 0x39))).toMatch(
      /BackupRefusal: The backup is damaged: parcel/,
    )
    const original = bytes.indexOf(`originals/${paper.hash}`)
    expect(await refused('original', flipped(original + 100_000, bytes[original + 100_000]! ^ 1))).toMatch(
      /damaged in its originals/,
    )
  })

  test('a record that was changed together with its hash: the audit knows', async () => {
    const planted = await newTarget()
    await restoreBackup(whole, planted)
    await rows(planted.url, 'alter table decision disable trigger user')
    await rows(
      planted.url,
      `update decision set reason = 'Because.' where id = (select min(id::text)::uuid from decision)`,
    )
    await rows(planted.url, 'alter table decision enable trigger user')
    const { broken } = await backUp(file('planted.tar'), planted)
    expect(broken).toEqual([expect.stringMatching(/^decision .* is not as entry \d+ of quillback left it/)])
    await expect(restoreBackup(file('planted.tar'), await newTarget())).rejects.toThrow(
      /The audit did not hold when this backup was made: decision .*--broken/,
    )
    const target = await newTarget()
    const restored = await restoreBackup(file('planted.tar'), { ...target, asBroken: true })
    expect(restored.broken).toEqual(broken)
    // And it keeps saying so: in the database itself, in the next backup, and in whatever is restored from that.
    expect(await rows(target.url, 'select says from audit_break')).toEqual([{ says: broken![0] }])
    await expect(rows(target.url, 'delete from audit_break')).rejects.toThrow(/never changed or removed/)
    expect((await backUp(file('again.tar'), target)).broken).toEqual(broken)
    await expect(restoreBackup(file('again.tar'), await newTarget())).rejects.toThrow(/--broken/)
  })

  test('a bit that is another, wherever, is told in words and leaves nothing behind', async () => {
    const head = (name: string) => bytes.lastIndexOf(name)
    // Contents of each kind, and of the heads of entries a name, a length and a sum.
    const places = [
      ...['opening.json', 'jobs.ndjson', 'manifest.json'].map((name) => head(name) + 530),
      head('jobs.ndjson'),
      head('manifest.json') + 124,
      head('tables/parcel/') + 150,
    ]
    for (const at of places) {
      const flipped = Buffer.from(bytes)
      flipped[at] = flipped[at]! ^ 0x10
      expect(await refused(`bit-${at}`, flipped)).toMatch(/^(?:BackupRefusal|restored)/)
    }
  }, 60_000)

  test('a database that holds something', async () => {
    await expect(restoreBackup(whole, { url, originals: file('unused') })).rejects.toThrow(
      /The database is not empty: /,
    )
    expect(await readdir(folder)).not.toContain('unused')
  })

  test('what a newer version, or another program, has made', async () => {
    const changed = (from: string, to: string) =>
      Buffer.from(bytes.toString('latin1').replace(from, to), 'latin1')
    expect(await refused('form', changed('"form": 1', '"form": 2'))).toMatch(
      /is no backup that this version reads/,
    )
    const { opening } = await restoreBackup(whole, await newTarget())
    const { checksum, name } = opening.migrations.at(-1)!
    expect(await refused('line', changed(checksum, checksum.replace(/./g, '0')))).toMatch(
      new RegExp(`migration ${name} is another than this version's`),
    )
  })
})

test('what is restored over half is no hindrance: the next attempt starts on an empty database', async () => {
  const target = await newTarget()
  await writeFile(file('half'), bytes.subarray(0, bytes.length >> 1))
  await expect(restoreBackup(file('half'), target)).rejects.toThrow()
  expect((await restoreBackup(whole, target)).manifest).toEqual(manifest)
})
