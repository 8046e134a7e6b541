import { describe, expect, test } from 'vitest'
import { readDocument } from '../../src/scan/read-document.ts'
import {
  deepArrays,
  endlessPaper,
  manyPages,
  manyPaths,
  nestedForms,
  onePage,
  pictureBomb,
  selfDrawing,
  someEndless,
  words,
} from './broken-pdfs.ts'

const MB = 1024 * 1024

/** The service lives on: its own memory has not grown and it reads the next paper as if nothing had been. */
async function serviceIsWell(before: number): Promise<void> {
  expect(process.memoryUsage().rss - before).toBeLessThan(300 * MB)
  expect(await readDocument(onePage(words('PERMIT NO. 7')))).toMatchObject({
    outcome: 'read',
    pages: [{ state: 'read' }],
  })
}

describe('files made to harm', () => {
  test.each([
    ['forms in forms, a milliard drawings', () => nestedForms(9), ['timed-out']],
    ['a form that draws itself', selfDrawing, ['timed-out', 'damaged', 'blank']],
    ['a picture that unpacks to 30 GB', () => pictureBomb(100_000), ['picture-too-large']],
    ['strokes without end', () => manyPaths(2_000_000), ['timed-out', 'out-of-memory']],
    ['paper of 14,000 km', endlessPaper, ['blank', 'damaged', 'timed-out']],
    ['arrays 100,000 deep', () => deepArrays(100_000), ['blank', 'damaged']],
  ])('%s: the page is left out, with its reason', async (_, make, reasons) => {
    const before = process.memoryUsage().rss
    const from = Date.now()
    const reading = await readDocument(make(), { openMs: 8000, pageMs: 2000, memoryBytes: 1024 * MB })
    expect(Date.now() - from).toBeLessThan(14_000)
    const [page] = reading.pages
    expect(reading.outcome).toBe('read')
    expect(page?.state === 'unread' ? page.why : page?.state).toBeOneOf(reasons)
    await serviceIsWell(before)
  })

  test('10,000 pages are counted and refused, and read where that many are allowed', async () => {
    const pdf = manyPages(10_000)
    const refused = await readDocument(pdf)
    expect(refused).toMatchObject({ outcome: 'too-many-pages', pageCount: 10_000 })
    const last = await readDocument(pdf, { maxPages: 10_000 }, { from: 9_999 })
    expect(last).toMatchObject({ outcome: 'read', pages: [{ state: 'read' }, { state: 'read' }] })
  })

  test('pages past their time are left out, and those around them are read', async () => {
    const reading = await readDocument(someEndless(4, [2, 4]), { pageMs: 2000 })
    expect(
      reading.pages.map((page) => (page.state === 'read' ? page.words.words[1]?.text : page.why)),
    ).toEqual(['1', 'timed-out', '3', 'timed-out'])
  })

  test('a document past its time is given up, with the pages that were read till then', async () => {
    const reading = await readDocument(someEndless(3, [2]), { pageMs: 60_000, documentMs: 4000 })
    expect(reading).toMatchObject({ outcome: 'timed-out', pages: [{ state: 'read' }] })
  })
})
