/**
 * A paper as large as the service takes: `node tests/bench/large-paper.bench.ts [pages] [megabytes]`, 2,000 and 480 where
 * left out. Made on disk, kept as a stream, read with one kill in the middle and taken up after the pages that were read;
 * says the most memory that this process and the reading one had, and that each page came once.
 */
import { createReadStream, createWriteStream } from 'node:fs'
import { mkdtemp, readFile, rm, stat } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { finished } from 'node:stream/promises'
import PDFDocument from 'pdfkit'
import sharp from 'sharp'
import { openOriginals } from '../../src/files/originals.ts'
import { readDocument } from '../../src/scan/read-document.ts'

const [pages = 2000, megabytes = 480] = process.argv.slice(2).map(Number)
const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-large-'))
const MB = 1024 * 1024

/** Pages of text, each with a photo of noise, which no packing makes smaller. */
async function made(file: string): Promise<void> {
  const pdf = new PDFDocument({ size: 'LETTER', autoFirstPage: false })
  const out = createWriteStream(file)
  pdf.pipe(out)
  const side = Math.round(Math.sqrt((1.32 * megabytes * MB) / pages))
  for (let page = 1; page <= pages; page++) {
    const noise = { type: 'gaussian' as const, mean: 128, sigma: 60 }
    const photo = await sharp({
      create: { width: side, height: side, channels: 3, background: '#888', noise },
    })
      .grayscale()
      .jpeg({ quality: 95 })
      .toBuffer()
    pdf.addPage()
    pdf.fontSize(11).text(`PERMIT NO. ${page}  Septic tank capacity: 1,000 gal`, 72, 72)
    pdf.image(photo, 72, 120, { width: 200 })
    if (out.writableNeedDrain) await new Promise<void>((resolve) => out.once('drain', () => resolve()))
  }
  pdf.end()
  await finished(out)
}

let most = 0
let mostChild = 0
const watching = setInterval(() => {
  most = Math.max(most, process.memoryUsage.rss())
  void children().then((bytes) => {
    mostChild = Math.max(mostChild, bytes)
  })
}, 100)
/** Resident memory of the processes that this one has started; 0 where there is no /proc. */
async function children(): Promise<number> {
  try {
    const ids = await readFile(`/proc/self/task/${process.pid}/children`, 'utf8')
    const sizes = ids
      .split(' ')
      .filter(Boolean)
      .map(async (id) => {
        const status = await readFile(`/proc/${id}/status`, 'utf8')
        return Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? 0) * 1024
      })
    return Math.max(0, ...(await Promise.all(sizes)))
  } catch {
    return 0
  }
}

try {
  const file = path.join(folder, 'large.pdf')
  await made(file)
  const { size } = await stat(file)
  process.stdout.write(`${pages} pages, ${(size / MB).toFixed(0)} MB\n`)
  const originals = await openOriginals(path.join(folder, 'originals'))
  const atRest = process.memoryUsage.rss()
  most = atRest
  let from = performance.now()
  const kept = await originals.keep(createReadStream(file))
  process.stdout.write(
    `kept in ${((performance.now() - from) / 1000).toFixed(1)} s; at rest ${(atRest / MB).toFixed(0)} MB, at most ${(most / MB).toFixed(0)} MB\n`,
  )
  const whole = (await originals.pathOf(kept.hash))!
  const seen = new Map<number, number>()
  const onPage = (page: { state: string; page?: number; words?: { page: number } }): void => {
    const number = page.words?.page ?? page.page!
    seen.set(number, (seen.get(number) ?? 0) + 1)
  }
  from = performance.now()
  const stop = new AbortController()
  await readDocument(
    whole,
    {},
    {
      signal: stop.signal,
      onPage: (page) => {
        onPage(page)
        if (seen.size === Math.floor(pages / 3)) stop.abort()
      },
    },
  ).catch(() => {})
  const next = Math.max(...seen.keys()) + 1
  const reading = await readDocument(whole, {}, { from: next, onPage })
  const seconds = (performance.now() - from) / 1000
  const once = seen.size === pages && [...seen.values()].every((times) => times === 1)
  process.stdout.write(
    `${reading.outcome}, killed at page ${next - 1}, ${once ? 'each page once' : 'PAGES LOST OR TWICE'}, ${seconds.toFixed(0)} s, ${(pages / seconds).toFixed(0)} pages a second\n` +
      `this process at most ${(most / MB).toFixed(0)} MB, the reading one ${(mostChild / MB).toFixed(0)} MB\n`,
  )
  if (!once) process.exitCode = 1
} finally {
  clearInterval(watching)
  await rm(folder, { recursive: true, force: true })
}
process.exit()
