import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, afterEach, describe, expect, test } from 'vitest'
import { emptyDatabase } from './support/database.ts'

const MAIN = path.join(import.meta.dirname, '../src/main.ts')
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-service-'))
const url = await emptyDatabase()
const children: ChildProcess[] = []
afterEach(() => children.splice(0).forEach((child) => void child.kill('SIGKILL')))
afterAll(() => rm(folder, { recursive: true }))

type Run = {
  child: ChildProcess
  said: () => string
  ended: Promise<number | null>
  address: Promise<string>
}

/** The service as `npm start` runs it, on a free port. */
function start(environment: Record<string, string> = {}): Run {
  const env = { PATH: process.env.PATH, PORT: '0', ASFOUND_DATA: folder, DATABASE_URL: url, ...environment }
  const child = spawn(process.execPath, [MAIN], { env, stdio: ['ignore', 'pipe', 'pipe'] })
  children.push(child)
  let said = ''
  const address = new Promise<string>((resolve) => {
    const hear = (text: string) => {
      said += text
      const found = /listening on (http:\S+?)"/.exec(said)
      if (found) resolve(found[1]!)
    }
    child.stdout.setEncoding('utf8').on('data', hear)
    child.stderr.setEncoding('utf8').on('data', hear)
  })
  const ended = new Promise<number | null>((resolve) => void child.once('close', resolve))
  return { child, said: () => said, ended, address }
}

describe('the service', () => {
  test('starts on an empty database, answers, and stops cleanly when told to', async () => {
    const { child, ended, address, said } = start()
    const ready = await fetch(`${await address}/health/ready`)
    expect([ready.status, await ready.json()]).toEqual([200, { state: 'ok' }])
    child.kill('SIGTERM')
    expect([await ended, said()]).toEqual([0, expect.stringContaining('stopping: SIGTERM')])
  })

  test('two that start at once on one empty database both answer', async () => {
    const database = await emptyDatabase()
    const both = [start({ DATABASE_URL: database }), start({ DATABASE_URL: database })]
    const ready = await Promise.all(
      both.map(async ({ address }) => (await fetch(`${await address}/health/ready`)).status),
    )
    expect(ready).toEqual([200, 200])
  })

  test('says at every start, and in its figures, that its audit was broken when it was restored', async () => {
    const database = await emptyDatabase()
    const first = start({ DATABASE_URL: database })
    await first.address
    expect(first.said()).not.toContain('was broken when it was restored')
    first.child.kill('SIGTERM')
    await first.ended
    const owner = new pg.Client({ connectionString: database })
    await owner.connect()
    await owner.query(`insert into audit_break (says) values ('permit 1: no entry says what it is now')`)
    await owner.end()
    const second = start({ DATABASE_URL: database })
    const figures = await (await fetch(`${await second.address}/metrics`)).text()
    expect(second.said()).toContain('the audit of this database was broken when it was restored (places: 1)')
    expect(figures).toMatch(/^asfound_audit_known_breaks 1$/m)
  })

  test('tells every fault of its settings at once and exits 1', async () => {
    const { ended, said } = start({ PORT: 'x', LOG_LEVEL: 'y' })
    expect(await ended).toBe(1)
    expect(said()).toBe(
      'Please correct these settings (docs/settings.md describes them):\n  PORT is not a whole number\n' +
        '  LOG_LEVEL must be one of: fatal, error, warn, info, debug, trace, silent\n',
    )
  })

  test('says so when its port is taken', async () => {
    const holder = net.createServer().listen(0, '127.0.0.1')
    await new Promise((resolve) => holder.once('listening', resolve))
    const { port } = holder.address() as net.AddressInfo
    const { ended, said } = start({ PORT: String(port) })
    expect([await ended, said()]).toEqual([
      1,
      expect.stringMatching(/EADDRINUSE.*Set PORT \(and HOST\) to a free address/),
    ])
    holder.close()
  })
})
