import { Readable } from 'node:stream'
import { expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { readDocumentTaken, readText } from '../../../src/operations/documents/read-document.ts'
import { readPaper } from '../../../src/operations/documents/read-paper.ts'
import { takeInDocument } from '../../../src/operations/documents/take-in-document.ts'
import { testApp } from '../../support/app.ts'
import { densePage, typedPdf, typedPermit } from '../../support/dense-pdf.ts'
import { longestStall } from '../../support/stalls.ts'

/** What nobody may be kept waiting for, milliseconds: the promise is 100, and machines that run tests are busy. */
const MOST_MS = Number(process.env.STALL_MS ?? 200)
const PAGES = Number(process.env.STALL_PAGES ?? 60)

const { services: context, people, ask } = await testApp()
const { reviewer } = people

async function reading(pages: readonly (readonly string[])[]) {
  const kept = await context.files.keep(Readable.from([typedPdf(pages)]))
  const paper = { kept, mediaType: 'application/pdf', fileName: null, parcel: null }
  const { id } = must(await takeInDocument(context, reviewer, paper)).document
  const stall = await longestStall(() =>
    readPaper(context, {
      id,
      actor: reviewer,
      data: { document: id },
      report: async () => {},
      signal: new AbortController().signal,
    }),
  )
  const { document } = must(await readDocumentTaken(context, reviewer, id))
  return { stall, document, text: must(await readText(context, reviewer, { id, after: 0, most: 1 })) }
}

test('a paper of many typed pages keeps nobody waiting while what it says is worked out', async () => {
  const { stall, document } = await reading(Array.from({ length: PAGES }, (_, page) => typedPermit(page)))
  expect(document.state).toBe('proposed')
  expect(document.permits.length).toBe(PAGES)
  expect(stall).toBeLessThan(MOST_MS)
  const here = '/v1/counties/quillback/documents'
  for (const url of [
    `${here}/${document.id}`,
    `${here}/${document.id}/text?limit=500`,
    `${here}/${document.id}/proposals?limit=50`,
    `${here}?limit=500`,
    `/counties/quillback/documents/${document.id}`,
  ]) {
    const told = await longestStall(() => ask('reviewer', { url }))
    expect(told, url).toBeLessThan(MOST_MS)
  }
}, 60_000)

test('one page with more words than a page can have keeps nobody waiting, and it is said what was left out', async () => {
  const { stall, document, text } = await reading([densePage(6_000)])
  expect(document.state).toBe('proposed')
  expect(text[0]!.text.split(' ').length).toBeLessThanOrEqual(5_000)
  expect(stall).toBeLessThan(MOST_MS)
}, 90_000)
