import { Readable } from 'node:stream'
import PDFDocument from 'pdfkit'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { confirmTranscription } from '../../../src/operations/documents/confirm-transcription.ts'
import { readPaper } from '../../../src/operations/documents/read-paper.ts'
import { takeInDocument } from '../../../src/operations/documents/take-in-document.ts'
import { sourceAt } from '../../../src/records/permit-claims.ts'
import { makeForm } from '../../forms/make.ts'
import { testApp } from '../../support/app.ts'
import { newParcel, permit1974, permitRecord } from '../../support/quillback.ts'
import { wholeDocument } from '../../support/whole-document.ts'

const { services: context, people } = await testApp()
const { reviewer } = people

async function takeIn(bytes: Buffer): Promise<string> {
  const kept = await context.files.keep(Readable.from([bytes]))
  const paper = { kept, mediaType: 'application/pdf', fileName: null, parcel: null }
  return must(await takeInDocument(context, reviewer, paper)).document.id
}

type Told = { done: number; says: string }
const read = (document: string, signal = new AbortController().signal, told: Told[] = []) =>
  readPaper(context, {
    id: document,
    actor: reviewer,
    data: { document },
    report: async ({ done, says }) => void told.push({ done, says }),
    signal,
  })
const stateOf = async (id: string) => {
  const { document, proposals } = await wholeDocument(context, reviewer, id)
  return { ...document, proposals }
}

/** A page on which something is drawn and nothing is written. */
async function picture(): Promise<Buffer> {
  const pdf = new PDFDocument({ size: 'LETTER' })
  const chunks: Buffer[] = []
  pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
  const ended = new Promise<void>((resolve) => pdf.once('end', () => resolve()))
  pdf.rect(100, 100, 300, 200).fill('#777777').end()
  await ended
  return Buffer.concat(chunks)
}

describe('a paper of pictures alone', () => {
  test('is kept where nothing can be made out, and a person can type what it shows', async () => {
    const id = await takeIn(await picture())
    await read(id)
    const { state, pages, contentHash } = await stateOf(id)
    expect([state, pages]).toEqual(['proposed', 1])
    expect(await context.files.pathOf(contentHash)).toBeDefined()

    const { id: parcel, number } = await newParcel(context)
    const typed = { parcel: number, proposal: null, record: permitRecord(permit1974), places: {} }
    const { permits } = must(
      await confirmTranscription(context, reviewer, {
        document: id,
        version: undefined,
        permits: [typed],
        body: {},
      }),
    )
    expect(permits[0]!.parcel).toBe(parcel)
    expect(sourceAt(permits[0]!, '/bedrooms')).toMatchObject({
      kind: 'document',
      document: id,
      confidence: null,
      confirmedBy: reviewer.account,
    })
    expect((await stateOf(id)).state).toBe('confirmed')
  })
})

describe('a reading', () => {
  test('tells how far it is, page by page', async () => {
    const { pdf } = await makeForm([
      { layout: 'form-1978', seed: 901 },
      { layout: 'form-1986', seed: 902 },
    ])
    const told: Told[] = []
    expect(await read(await takeIn(pdf), undefined, told)).toMatchObject({ state: 'proposed' })
    expect(told.map(({ done }) => done)).toEqual([1, 2])
  })

  test('that is called off leaves the paper to be read again, and then ends as if it had not been', async () => {
    const { pdf } = await makeForm([{ layout: 'form-1986', seed: 903 }])
    const id = await takeIn(pdf)
    await expect(read(id, AbortSignal.abort())).rejects.toThrow(/called off/)
    expect((await stateOf(id)).state).toBe('reading')
    expect(await read(id)).toMatchObject({ state: 'proposed' })
    expect((await stateOf(id)).proposals).toHaveLength(1)
  })

  test('that was killed in the middle goes on where it was: no page twice, none lost', async () => {
    const layouts = ['form-1978', 'form-1986', 'letter', 'form-2015', 'card-1958'] as const
    const { pdf } = await makeForm(layouts.map((layout, index) => ({ layout, seed: 910 + index })))
    const whole = await takeIn(Buffer.concat([pdf, Buffer.from('\n')]))
    await read(whole)
    const id = await takeIn(pdf)
    const stop = new AbortController()
    const told: Told[] = []
    const run = { id, actor: reviewer, data: { document: id }, signal: stop.signal }
    const report = async ({ done, says }: Told) => {
      told.push({ done, says })
      if (done === 2) stop.abort()
    }
    await expect(readPaper(context, { ...run, report })).rejects.toThrow(/called off/)
    const before = told.length
    expect(await read(id, undefined, told)).toMatchObject({ state: 'proposed' })
    const pages = told.map(({ says }) => says)
    expect(new Set(pages).size).toBe(layouts.length)
    expect(pages.length).toBe(layouts.length)
    expect(told[before]?.done).toBe(before + 1)
    expect((await stateOf(id)).proposals).toEqual((await stateOf(whole)).proposals)
  })

  test('of a paper whose file is gone says so', async () => {
    const { pdf } = await makeForm([{ layout: 'form-1986', seed: 904 }])
    const id = await takeIn(pdf)
    const lost = { ...context, files: { ...context.files, pathOf: async () => undefined } }
    const run = { id, actor: reviewer, data: { document: id }, report: async () => {} }
    await readPaper(lost, { ...run, signal: new AbortController().signal })
    expect(await stateOf(id)).toMatchObject({
      state: 'failed',
      reason: expect.stringMatching(/missing from storage/),
    })
  })

  test('doubts a parcel number that no parcel of the county has', async () => {
    const { pdf, papers } = await makeForm([{ layout: 'form-1986', seed: 905 }])
    const id = await takeIn(pdf)
    await read(id)
    const [proposal] = (await stateOf(id)).proposals
    expect(proposal!.parcelNumber?.value).toBe(papers[0]!.truth.parcelNumber)
    expect(proposal!.parcelNumber?.doubts.map(({ kind }) => kind)).toContain('not-in-county')
  })
})
