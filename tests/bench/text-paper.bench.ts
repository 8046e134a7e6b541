/**
 * Text PDFs against the bare library: `node tests/bench/text-paper.bench.ts [pages] [rounds]` (200, 5). The same file's text
 * by the library alone in a process of its own, by our reading of pages in the same way, through the child that the API
 * uses with its links, and by `pdftotext -bbox` where that is installed. Each in turn, so that a busy machine is as busy
 * for all; the least of the rounds counts.
 */
import { spawnSync } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { readDocument } from '../../src/scan/read-document.ts'
import { FIRST_CONTACT, HELD_OUT, type LayoutName, makeForm } from '../forms/make.ts'

const [pages = 200, rounds = 5] = process.argv.slice(2).map(Number)
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-text-'))
const layouts = [...Object.keys(HELD_OUT), ...Object.keys(FIRST_CONTACT)] as LayoutName[]
const file = path.join(folder, 'paper.pdf')
const asked = Array.from({ length: pages }, (_, at) => ({
  layout: layouts[at % layouts.length]!,
  seed: at + 1,
}))
await writeFile(file, (await makeForm(asked)).pdf)

const own = (...args: readonly string[]): number => {
  const from = performance.now()
  const { status, stderr } = spawnSync(process.execPath, [
    new URL('./text-once.ts', import.meta.url).pathname,
    ...args,
  ])
  if (status !== 0) throw new Error(stderr.toString())
  return performance.now() - from
}
const ways: Readonly<Record<string, () => Promise<number | null>>> = {
  'the bare library': async () => own('bare', file),
  'our pages, in a process alone': async () => own('pages', file),
  'our pages with links, in a process alone': async () => own('links', file),
  'through the child of the API, with links': async () => {
    const from = performance.now()
    const reading = await readDocument(file)
    if (reading.outcome !== 'read' || reading.pages.length !== pages) throw new Error(reading.outcome)
    return performance.now() - from
  },
  'pdftotext -bbox': async () => {
    const from = performance.now()
    const { error, status } = spawnSync('pdftotext', ['-bbox', file, path.join(folder, 'out.html')])
    return error || status !== 0 ? null : performance.now() - from
  },
}
try {
  const least = new Map<string, number>()
  for (let round = 0; round < rounds; round++)
    for (const [name, way] of Object.entries(ways)) {
      const ms = await way()
      if (ms !== null) least.set(name, Math.min(ms, least.get(name) ?? Number.POSITIVE_INFINITY))
    }
  const bare = least.get('the bare library')!
  process.stdout.write(`${pages} pages\n| way | ms | of the bare library |\n| --- | --- | --- |\n`)
  for (const name of Object.keys(ways)) {
    const ms = least.get(name)
    process.stdout.write(
      ms === undefined
        ? `| ${name} | not installed | |\n`
        : `| ${name} | ${ms.toFixed(0)} | ${(ms / bare).toFixed(2)} |\n`,
    )
  }
} finally {
  await rm(folder, { recursive: true, force: true })
}
process.exit()
