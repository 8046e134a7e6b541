import { spawn } from 'node:child_process'
import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { text } from 'node:stream/consumers'
import pg from 'pg'
import { afterAll, describe, expect, test, vi } from 'vitest'
import { openOriginals } from '../../src/files/originals.ts'
import { newKeyPem } from '../../src/letters/signing/key-source.ts'
import { testApp } from '../support/app.ts'
import { emptyDatabase } from '../support/database.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../support/quillback.ts'

/** The commands as a person runs them: from a database of one's own to the embedded one, and back. */

const { services, ask, url } = await testApp()
const { number } = await newParcel(services)
const at = `/v1/counties/quillback/parcels/${number}`
await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permit1974 })
const draft = (await ask('firm', { method: 'POST', url: `${at}/findings`, body: inspectionThatDiffers })).body
await ask('firm', { method: 'POST', url: `/v1/counties/quillback/findings/${draft.id}/submission` })

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-backup-cli-'))
const place = (name: string) => path.join(folder, name)
await mkdir(place('there'))
await (await openOriginals(place('there/originals'))).keep(Readable.from([Buffer.from('a paper')]))
const there = { DATABASE_URL: url, ASFOUND_DATA: place('there') }
const embedded = { ASFOUND_DATA: place('embedded') }

const running = new Set<ReturnType<typeof spawn>>()
afterAll(async () => {
  for (const child of running) child.kill('SIGKILL')
  // The embedded server lingers for two seconds after the last command let go of it.
  const stopped = async () => !(await readdir(place('embedded/postgres'))).includes('address.json')
  await vi.waitUntil(stopped, { timeout: 20_000, interval: 100 })
  await rm(folder, { recursive: true })
})

async function run(command: string, args: readonly string[], settings: Readonly<Record<string, string>>) {
  const program = path.join(import.meta.dirname, `../../src/cli/${command}.ts`)
  const child = spawn(process.execPath, [program, ...args], {
    env: { PATH: process.env.PATH, ...settings },
    cwd: folder,
  })
  running.add(child)
  const [out, err, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    new Promise<number | null>((resolve) => child.once('close', resolve)),
  ])
  running.delete(child)
  return { code, out, err }
}

describe('backup and restore', () => {
  test('a backup is one file, whole or not there, readable by its owner alone', async () => {
    const made = await run('backup', [place('one.tar.gz')], there)
    expect([made.code, made.err]).toEqual([0, ''])
    expect(made.out).toMatch(/^permit: 1$/m)
    expect(made.out).toMatch(/^originals: 1, 7 bytes$/m)
    expect(made.out).toMatch(
      /^NOT in the backup, .+\n {2}\S+\/there\/access-key.+\n {2}\S+\/letter-signing-key\.pem/m,
    )
    expect((await stat(place('one.tar.gz'))).mode & 0o777).toBe(0o600)
    expect((await readFile(place('one.tar.gz'))).readUInt16BE(0)).toBe(0x1f8b)
    expect((await readdir(folder)).filter((name) => name.endsWith('.draft'))).toEqual([])
  })

  test('restored into an embedded server it proves itself, and the audit holds there', async () => {
    const restored = await run('restore', [place('one.tar.gz')], embedded)
    expect([restored.code, restored.err]).toEqual([0, ''])
    expect(restored.out).toMatch(/1 originals match by count and hash; the audit chains are intact/)
    expect(restored.out.match(/is missing and is in no backup/g)).toHaveLength(2)
    const verified = await run('verify-audit', [], embedded)
    expect([verified.code, verified.err]).toEqual([0, ''])
    expect(verified.out).toMatch(/^quillback: \d+ entries, the last [0-9a-f]{64}$/m)
  }, 60_000)

  test('and from there into a database of one’s own again', async () => {
    expect((await run('backup', [place('two.tar')], embedded)).code).toBe(0)
    const target = { DATABASE_URL: await emptyDatabase(), ASFOUND_DATA: place('third') }
    const restored = await run('restore', [place('two.tar')], target)
    expect([restored.code, restored.err]).toEqual([0, ''])
    // SHA-256 of "a paper", by another program (sha256sum).
    const hash = '5d05adf8844983aef7150eb52e2317a8e13dcf86f7cb1131022f9bb38533436c'
    expect(await (await openOriginals(place('third/originals'))).pathOf(hash)).toBeDefined()
  }, 60_000)

  test('what can’t be done is told in a sentence, and the exit says so', async () => {
    const again = await run('restore', [place('one.tar.gz')], there)
    expect([again.code, again.out]).toEqual([1, ''])
    expect(again.err).toMatch(/^The database is not empty: \w+ holds something\./)
    const nowhere = await run('backup', [place('no/such/folder/x.tar')], there)
    expect([nowhere.code, nowhere.err.length > 0]).toEqual([1, true])
    const none = await run('backup', [place('none.tar')], { ...there, DATABASE_URL: await emptyDatabase() })
    expect([none.code, none.err]).toEqual([
      1,
      'There is no database of this service here: nothing to back up.\n',
    ])
    expect(await readdir(folder)).not.toContain('none.tar')
  }, 60_000)
})

describe('verifying the audit', () => {
  const sealed = { ...there, ASFOUND_SIGNING_KEY: newKeyPem() }

  test('notes where the chains end, and later says that they still hold it', async () => {
    const noted = await run('verify-audit', ['--note', place('heads.json')], there)
    expect([noted.code, noted.out]).toEqual([0, expect.stringMatching(/not signed: there is no key here/)])
    const against = await run('verify-audit', ['--against', place('heads.json')], there)
    expect([against.code, against.err]).toEqual([0, ''])
    expect((await run('verify-audit', ['--note', place('heads.json')], there)).code).toBe(1)
  }, 60_000)

  test('seals them by the key of the letters; a seal that does not fit is told', async () => {
    const { code, out } = await run('verify-audit', ['--note', place('sealed.json')], sealed)
    expect([code, out]).toEqual([0, expect.stringMatching(/, signed\.$/m)])
    const unknown = await run('verify-audit', ['--against', place('sealed.json')], there)
    expect([unknown.code, unknown.err]).toEqual([1, expect.stringMatching(/its seal does not hold/)])
  }, 60_000)

  test('names the first bad entry and the record that was changed, and exits with 1', async () => {
    const client = new pg.Client({ connectionString: url })
    await client.connect()
    await client.query('alter table audit disable trigger user; alter table permit disable trigger user')
    await client.query(`update audit set role = 'firm' where county = 'quillback' and number = 6`)
    await client.query(`update permit set record = jsonb_set(record, '{record,bedrooms}', '4')`)
    await client.query('alter table audit enable trigger user; alter table permit enable trigger user')
    await client.end()
    const { code, err } = await run('verify-audit', [], there)
    expect(code).toBe(1)
    expect(err.trim().split('\n')).toEqual([
      expect.stringMatching(
        /^WRONG {2}entry 6 of quillback \(\w+ [^ ]+, made 20.*\) does not follow entry 5: /,
      ),
      expect.stringMatching(/^WRONG {2}permit [0-9a-f-]{36} is not as entry \d+ of quillback left it/),
    ])
  }, 60_000)
})

test('a file of heads that was edited is refused', async () => {
  await writeFile(place('edited.json'), '{"at":"2026-01-01T00:00:00Z","heads":[{"county":"quillback"}]}')
  const { code, err } = await run('verify-audit', ['--against', place('edited.json')], there)
  expect([code, err]).toEqual([1, expect.stringMatching(/it holds no heads of an audit/)])
})
