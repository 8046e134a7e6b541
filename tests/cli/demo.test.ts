import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'
import { emptyDatabase } from '../support/database.ts'

const url = await emptyDatabase()
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-demo-'))
const started: ChildProcess[] = []
afterAll(async () => {
  for (const child of started) child.kill('SIGKILL')
  await rm(folder, { recursive: true })
})

/** Starts `npm run demo`'s program and gives what it prints once it has printed all. */
async function demo(): Promise<{ readonly text: string; readonly stop: () => Promise<number | null> }> {
  const child = spawn(process.execPath, [fileURLToPath(new URL('../../src/cli/demo.ts', import.meta.url))], {
    env: { ...process.env, DATABASE_URL: url, ASFOUND_DATA: folder, PORT: '0', LOG_LEVEL: 'error' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  started.push(child)
  let text = ''
  const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)))
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (chunk) => {
      text += chunk
      if (/^3\. .*\ncurl .*\n/m.test(text)) resolve()
    })
    child.stderr.on('data', (chunk) => reject(new Error(String(chunk))))
    void ended.then((code) => reject(new Error(`ended with ${code}: ${text}`)))
  })
  return {
    text,
    stop: async () => {
      child.kill('SIGINT')
      return ended
    },
  }
}

/** What a pasted line does, without a shell or curl on this machine: its one request, its one expression of node. */
async function paste(line: string): Promise<string> {
  const [request = '', filter] = line.split(' | ')
  const quoted = (text: string) => [...text.matchAll(/'([^']*)'/g)].map(([, inside]) => inside!)
  const [address, ...options] = quoted(request)
  const data = request.includes(' -d ') ? options.at(-1) : undefined
  const headers = options
    .filter((option) => option !== data)
    .map((option) => option.split(': ') as [string, string])
  const answer = await fetch(address!, { headers, ...(data ? { method: 'POST', body: data } : {}) })
  expect(answer.status, await answer.clone().text()).toBe(200)
  const body = await answer.text()
  return filter
    ? execFileSync(process.execPath, ['-p', quoted(filter)[0]!], { input: body, encoding: 'utf8' })
    : body
}

describe('npm run demo', () => {
  test('loads the county, and its three lines do what they say when pasted', async () => {
    const { text, stop } = await demo()
    expect(text).toMatch(/^Loaded \d\d parcels/m)
    const lines = text.split('\n').filter((line) => line.startsWith('curl '))
    expect(lines).toHaveLength(3)
    const [trial, queue, status] = await Promise.all(lines.map(paste))
    expect(trial).toContain(
      'action: The liquid in the tank is 7" below the outlet invert, about 109 gal short.',
    )
    expect(trial).toContain('review: The tank holds 751 ± 21 gal; the record says 1,000 gal')
    expect(queue!.trim().split('\n')).toHaveLength(5)
    expect(JSON.parse(status!)).toMatchObject({ status: { word: 'action-needed' } })
    expect(await stop()).toBe(0)
  }, 60_000)

  test('started again, leaves the county as it was and gives new tokens', async () => {
    const { text, stop } = await demo()
    expect(text).toMatch(/Using the parcels in/)
    const line = text
      .split('\n')
      .filter((it) => it.startsWith('curl '))
      .at(-1)!
    expect(JSON.parse(await paste(line))).toMatchObject({
      parcel: { number: '07-0433-0017' },
    })
    expect(await stop()).toBe(0)
  }, 60_000)
})
