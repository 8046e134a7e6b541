import { execFile } from 'node:child_process'
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'

const COMMAND = fileURLToPath(new URL('../../src/cli/rules-check.ts', import.meta.url))

const run = (...args: string[]): Promise<{ code: number; out: string; err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [COMMAND, ...args], (error, out, err) => {
      done({ code: error ? Number(error.code) : 0, out, err })
    })
  })

let folder: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'asfound-check-'))
  await mkdir(join(folder, 'alder'))
  await writeFile(join(folder, 'alder', 'code.yaml'), 'pack: alder/code\ntitle: T\ncolor: red\n')
  await writeFile(join(folder, 'alder', 'more.yaml'), 'pack: alder/mo re\n')
})
afterAll(() => rm(folder, { recursive: true }))

test('sound packs: a summary by parameter and status, and 0', async () => {
  const { code, out, err } = await run()
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toMatch(/^\d+ packs of \d+ places, no faults\./)
  expect(out).toMatch(/^tank\.minimum-capacity +\d+ /m)
  expect(out).toContain('Sources that contradict each other (both are kept):')
})

test('every fault of every file at its line and column, and 1', async () => {
  const { code, err } = await run(folder)
  expect(code).toBe(1)
  expect(err.trim().split('\n')).toEqual([
    'alder/code.yaml:1:1: "jurisdiction" is missing',
    'alder/code.yaml:3:1: unknown key "color"',
    'alder/more.yaml:1:1: "jurisdiction" is missing',
    'alder/more.yaml:1:1: "title" is missing',
    'alder/more.yaml:1:7: a pack is named <place>/<topic> in small letters, digits and hyphens',
    '5 faults.',
  ])
})

test('a path that leads nowhere, and an option there isn’t', async () => {
  expect(await run(join(folder, 'elsewhere'))).toMatchObject({
    code: 1,
    err: expect.stringContaining('Nothing found at'),
  })
  expect(await run('--fast')).toMatchObject({
    code: 1,
    err: expect.stringContaining('Unknown option --fast'),
  })
})
