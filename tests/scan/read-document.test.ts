import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { OutsideFailure } from '../../src/base/outside-failure.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { makeForm } from '../forms/make.ts'
import { cyclic, manyPages, noPages, onePage, withScripts, words } from './broken-pdfs.ts'

const textOf = async (pdf: Uint8Array): Promise<string> => {
  const reading = await readDocument(pdf)
  if (reading.outcome !== 'read') throw new Error(reading.outcome)
  return reading.pages
    .flatMap((page) => (page.state === 'read' ? page.words.words.map(({ text }) => text) : []))
    .join(' ')
}

describe('the words of a PDF', () => {
  test('come with boxes in fractions of the page, origin at the top left', async () => {
    const reading = await readDocument(onePage(words('PERMIT NO. 1978-014')))
    expect(reading.outcome).toBe('read')
    if (reading.outcome !== 'read' || reading.pages[0]?.state !== 'read') return
    const page = reading.pages[0].words
    expect(page).toMatchObject({
      page: 1,
      widthPt: 612,
      heightPt: 792,
      readBy: 'text-layer',
      secondWords: null,
    })
    expect(page.words.map(({ text }) => text)).toEqual(['PERMIT', 'NO.', '1978-014'])
    const first = page.words[0]!.box
    // 72 pt from the left of 612, baseline 700 pt up of 792, 12 pt type.
    expect(first.x).toBeCloseTo(72 / 612, 3)
    expect(first.y).toBeGreaterThan((792 - 712) / 792)
    expect(first.y + first.h).toBeGreaterThan((792 - 700) / 792)
    expect(first.y + first.h).toBeLessThan((792 - 696) / 792)
  })
  test('a page turned in the file is read upright', async () => {
    const turned = onePage(`0 1 -1 0 792 0 cm ${words('PERMIT NO. 1978-014')}`)
      .toString('latin1')
      .replace('/Type /Page /Parent', '/Type /Page /Rotate 90 /Parent')
    expect(await textOf(Buffer.from(turned, 'latin1'))).toBe('PERMIT NO. 1978-014')
  })
  test('bold made by printing twice is one word', async () => {
    expect(await textOf(onePage(`${words('PERMIT')} ${words('PERMIT').replace('72 700', '72.3 700')}`))).toBe(
      'PERMIT',
    )
  })
  test('a part of the pages, one at a time', async () => {
    const seen: number[] = []
    const reading = await readDocument(
      manyPages(6),
      {},
      {
        from: 3,
        to: 5,
        onPage: (page) => void seen.push(page.state === 'read' ? page.words.page : page.page),
      },
    )
    expect(seen).toEqual([3, 4, 5])
    expect(reading).toMatchObject({ outcome: 'read', pageCount: 6 })
  })
})

describe('what is wrong with a file is told, with what to do', () => {
  const refused = async (pdf: Uint8Array, limits = {}) => {
    const reading = await readDocument(pdf, limits)
    if (reading.outcome === 'read') throw new Error('it was read')
    expect(reading.says).toMatch(/^[A-Z].*\.$/)
    return reading.outcome
  }
  test('not a PDF', async () => {
    expect(await refused(Buffer.from('Dear sir or madam'))).toBe('not-a-pdf')
    expect(await refused(Buffer.alloc(0))).toBe('not-a-pdf')
    expect(await refused(Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]))).toBe('not-a-pdf')
  })
  test('no pages', async () => expect(await refused(noPages())).toBe('no-pages'))
  test('too many pages', async () =>
    expect(await refused(manyPages(21), { maxPages: 20 })).toBe('too-many-pages'))
  test('too big', async () => expect(await refused(manyPages(3), { maxBytes: 100 })).toBe('too-big'))
  test('a header and nothing more', async () =>
    expect(await refused(Buffer.from('%PDF-1.7\n'))).toBe('truncated'))
  test('an end and no pages to find', async () =>
    expect(await refused(Buffer.from('%PDF-1.7\ngarbage\n%%EOF\n'))).toBe('damaged'))
  test('a tree of pages that leads back to itself', async () => {
    const reading = await readDocument(cyclic(), { openMs: 10_000, pageMs: 5000 })
    if (reading.outcome === 'read') expect(reading.pages.every(({ state }) => state === 'unread')).toBe(true)
    else expect(['damaged', 'no-pages', 'timed-out']).toContain(reading.outcome)
  })
  test('a picture of paper, where pictures are left unread', async () => {
    const scan = onePage('q 612 0 0 792 0 0 cm /I Do Q', '/XObject << /I 6 0 R >>', [
      '<< /Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Length 1 >>\nstream\n0\nendstream',
    ])
    const left = await readDocument(scan, {}, { pictures: 'leave' })
    expect(left.outcome).toBe('pure-scan')
    expect(await readDocument(scan)).toMatchObject({
      outcome: 'read',
      pages: [{ state: 'unread', why: 'blank' }],
    })
  })
  test('a locked one', async () => {
    const { default: PDFDocument } = await import('pdfkit')
    const pdf = new PDFDocument({ userPassword: 'quillback', pdfVersion: '1.7' })
    const chunks: Buffer[] = []
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
    const done = new Promise((resolve) => pdf.on('end', resolve))
    pdf.text('PERMIT').end()
    await done
    expect(await refused(Buffer.concat(chunks))).toBe('encrypted')
  })
})

describe('a file cut short', () => {
  test('what can be recovered is read, and it is said that the end is missing', async () => {
    const { pdf } = await makeForm([{ layout: 'form-1978', seed: 1 }])
    const reading = await readDocument(pdf.subarray(0, pdf.length - 120))
    expect(reading.outcome).toBe('read')
    if (reading.outcome === 'read') expect(reading.notes.join()).toMatch(/end of this file is missing/)
  })
})

describe('the child process', () => {
  test('scripts in a PDF do not run', async () =>
    expect(await textOf(withScripts())).toBe('PERMIT NO. 1978-014'))
  test('a deadline ends the opening', async () => {
    expect(await readDocument(onePage(words('PERMIT')), { openMs: 1 })).toMatchObject({
      outcome: 'timed-out',
    })
  })
  test('too little memory is an outcome', async () => {
    const reading = await readDocument(onePage(words('PERMIT')), { memoryBytes: 16 * 1024 * 1024 })
    expect(reading.outcome).toBe('out-of-memory')
  })
  test('called off, it throws and leaves no file behind', async () => {
    const before = (await readdir(tmpdir())).filter((name) => name.startsWith('asfound-scan-'))
    await expect(readDocument(manyPages(50), {}, { signal: AbortSignal.timeout(5) })).rejects.toThrow(
      OutsideFailure,
    )
    const after = (await readdir(tmpdir())).filter((name) => name.startsWith('asfound-scan-'))
    expect(after.filter((name) => !before.includes(name))).toEqual([])
  })
  test('a path is read as well as bytes', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'asfound-test-'))
    await writeFile(join(folder, 'permit.pdf'), onePage(words('PERMIT')))
    expect(await readDocument(join(folder, 'permit.pdf'))).toMatchObject({ outcome: 'read' })
    await rm(folder, { recursive: true })
  })
})
