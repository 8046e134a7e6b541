import { spawn } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { text } from 'node:stream/consumers'
import { afterAll, expect, test } from 'vitest'
import { openOriginals } from '../../src/files/originals.ts'
import { asProblem } from '../../src/http/plugins/error-answers.ts'
import { outsideIfGone } from '../../src/store/database/database-fault.ts'

type Seen = { readonly status: number; readonly retryAfter: number }
type Report = {
  readonly before: readonly Seen[]
  readonly written: readonly (Seen | null)[]
  readonly during: readonly Seen[]
  readonly ready: Seen
  readonly live: Seen
  readonly drafts: readonly string[]
  readonly recoveredMs: number
  readonly again: readonly Seen[]
  readonly paper: Seen
  readonly rows: readonly { readonly number: string; readonly n: number }[]
  readonly faults: readonly string[]
}

const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-disk-'))
afterAll(() => rm(folder, { recursive: true }))

/** Undefined where this machine gives a test no disk of its own (no root, or a container without the right to mount). */
async function onItsOwnDisk(): Promise<Report | undefined> {
  const driver = path.join(import.meta.dirname, 'full-disk-driver.ts')
  const child = spawn('unshare', ['--mount', process.execPath, driver, folder], {
    env: { PATH: process.env.PATH },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise<number | null>((resolve) => {
    child.once('error', () => resolve(null))
    child.once('close', resolve)
  })
  const [out, err, code] = await Promise.all([text(child.stdout), text(child.stderr), ended])
  if (code === 0) return JSON.parse(out) as Report
  if (code === 77 || code === null || /unshare failed|Operation not permitted/.test(err)) return undefined
  throw new Error(`the driver failed: ${err.slice(-2_000)}`)
}

const report = await onItsOwnDisk()

if (report) {
  test('a disk that is full to the last byte: told, nothing halved; with room again all of it goes on', () => {
    const { written, during } = report
    expect(report.before.map(({ status }) => status)).toEqual([201, 201, 201])
    const asked = written.filter((it) => it !== null)
    // What still fits into what PostgreSQL had laid out beforehand is taken, and is there at the end.
    expect(new Set([201, 503, ...asked.map(({ status }) => status)])).toEqual(new Set([201, 503]))
    expect(asked.filter(({ status }) => status === 503).length).toBeGreaterThan(10)
    expect(new Set(during.map(({ status }) => status))).toEqual(new Set([503]))
    for (const { status, retryAfter } of [...asked, ...during])
      if (status === 503) expect(retryAfter).toBeGreaterThan(0)
    expect([report.ready.status, report.live.status]).toEqual([503, 200])
    expect(report.drafts).toEqual([])

    expect(report.recoveredMs).toBeLessThan(60_000)
    expect(new Set(report.again.map(({ status }) => status))).toEqual(new Set([201]))
    expect(report.paper.status).toBe(202)
    expect(report.rows).toHaveLength(written.length)
    expect(report.rows.filter(({ n }) => n !== 1)).toEqual([])
    expect(report.faults).toEqual([])
  })
} else {
  // No real disk to fill here: the same faults, as the kernel and PostgreSQL word them, at the two edges where they come in.
  test('a disk that is full, as it comes in from the file system: told, and nothing halved', async () => {
    const originals = await openOriginals(path.join(folder, 'originals'))
    const full = Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' })
    const bytes = Readable.from(
      (async function* () {
        yield Buffer.alloc(100_000)
        throw full
      })(),
    )
    await expect(originals.keep(bytes)).rejects.toMatchObject({
      name: 'OutsideFailure',
      retryAfterSeconds: 30,
    })
    expect(await readdir(path.join(folder, 'originals/drafts'))).toEqual([])
  })

  test('a disk that is full, as it comes in from PostgreSQL (53100): 503, and when to come again', () => {
    const fault = outsideIfGone(
      Object.assign(new Error('could not extend file: No space left on device'), { code: '53100' }),
    )
    const request = { log: { warn: () => {} } }
    const found = asProblem(fault as never, request as never)
    expect([found.status, found.headers['retry-after']]).toEqual([503, '5'])
  })
}
