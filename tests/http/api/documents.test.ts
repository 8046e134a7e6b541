import { describe, expect, test } from 'vitest'
import { readPaper } from '../../../src/operations/documents/read-paper.ts'
import { type LayoutName, makeForm } from '../../forms/make.ts'
import { testApp } from '../../support/app.ts'
import { newParcel } from '../../support/quillback.ts'
import { uploading } from '../../support/upload.ts'

const { app, services, ask, people } = await testApp({ settings: { UPLOAD_LIMIT_MB: 1 } })
const here = '/v1/counties/quillback'
const url = `${here}/documents`

let seed = 100
const paper = async (...layouts: LayoutName[]) => {
  const made = await makeForm(layouts.map((layout) => ({ layout, seed: ++seed })))
  return { bytes: made.pdf, name: 'permits.pdf', papers: made.papers }
}
const send = async (parts: Parameters<typeof uploading>[1], headers: Record<string, string> = {}) =>
  ask('reviewer', await uploading(url, parts, headers))

/** Reads a paper as its job does. */
const read = (document: string) =>
  readPaper(services, {
    id: document,
    actor: people.reviewer,
    data: { document },
    report: async () => {},
    signal: new AbortController().signal,
  })

async function proposed(...layouts: LayoutName[]) {
  const file = await paper(...layouts)
  const { id } = (await send({ file })).body.document
  await read(id)
  return { id, file, document: await withProposals(id) }
}

async function withProposals(id: string) {
  const { body } = await ask('reviewer', { url: `${url}/${id}` })
  const { items } = (await ask('reviewer', { url: `${url}/${id}/proposals?limit=50` })).body
  return { ...body, proposals: items }
}

describe('taking a paper in', () => {
  test('keeps it whole, and says which job reads it', async () => {
    const file = await paper('form-1986')
    const { status, body, headers } = await send({ file })
    expect(status).toBe(202)
    expect(body.document).toMatchObject({
      state: 'received',
      bytes: file.bytes.length,
      fileName: 'permits.pdf',
    })
    expect(headers.location).toBe(`${here}/jobs/${body.job}`)
    const kept = await services.files.read(body.document.contentHash)
    const chunks: Buffer[] = []
    for await (const chunk of kept!) chunks.push(chunk as Buffer)
    expect(Buffer.concat(chunks).equals(file.bytes)).toBe(true)
  })

  test('twice is told where the first is; with one key it is the first answer', async () => {
    const file = await paper('letter')
    const key = { 'idempotency-key': 'paper-1' }
    const first = await send({ file }, key)
    expect((await send({ file }, key)).body).toEqual(first.body)
    const other = await send({ file: await paper('letter') }, key)
    expect([other.status, other.body.type]).toEqual([422, '/problems/key-reused'])
    const again = await send({ file })
    expect([again.status, again.body.detail]).toEqual([
      409,
      expect.stringContaining(first.body.document.id as string),
    ])
  })

  test.each([
    ['no PDF', { file: { bytes: Buffer.from('PK word processor'), name: 'a.docx' } }, '/file'],
    ['no file', { parcel: '07-0412-0031' }, '/file'],
    ['a part that is none', { paper: { bytes: Buffer.from('%PDF-1.7'), name: 'a.pdf' } }, '/paper'],
  ])('%s is bad input, and nothing is kept', async (_, parts, pointer) => {
    const { status, body } = await send(parts)
    expect([status, body.errors[0].pointer]).toEqual([422, pointer])
  })

  test('a parcel that is not there is bad input', async () => {
    const { status, body } = await send({ file: await paper('form-1978'), parcel: '99-9999-9999' })
    expect([status, body.errors[0].pointer]).toEqual([422, '/parcel'])
  })

  test('a file beyond the limit is too large', async () => {
    const bytes = Buffer.concat([Buffer.from('%PDF-1.7\n'), Buffer.alloc(1_100_000, 32)])
    expect((await send({ file: { bytes, name: 'large.pdf' } })).status).toBe(413)
  })

  test('is for multipart only, and for reviewers only', async () => {
    expect((await ask('reviewer', { method: 'POST', url, body: { file: 'x' } })).status).toBe(415)
    const request = await uploading(url, { file: await paper('form-1978') })
    expect((await ask('firm', request)).status).toBe(403)
    expect((await ask('nobody', request)).status).toBe(401)
  })
})

describe('reading it', () => {
  test('proposes values, each with its page, box, words and confidence', async () => {
    const { document, file } = await proposed('form-1986')
    expect([document.state, document.pages, document.permits, document.proposals.length]).toEqual([
      'proposed',
      1,
      1,
      1,
    ])
    const [proposal] = document.proposals
    const number = proposal.fields.find((it: { pointer: string }) => it.pointer === '/number')
    expect(number.value).toBe(file.papers[0]!.truth.entry.number)
    expect(number).toMatchObject({ page: 1, box: { x: expect.any(Number) }, confidence: expect.any(Number) })
    const text = (await ask('reviewer', { url: `${url}/${document.id}/text` })).body
    expect(text.items[0].text).toContain(number.words)
  })

  test('again ends as the first time', async () => {
    const { id, document } = await proposed('form-1978')
    await read(id)
    expect(await withProposals(id)).toEqual(document)
  })

  test('of what is damaged ends with the reason', async () => {
    const bytes = Buffer.from('%PDF-1.7\nnothing of it follows')
    const { id } = (await send({ file: { bytes, name: 'cut.pdf' } })).body.document
    await read(id)
    const { body } = await ask('reviewer', { url: `${url}/${id}` })
    expect([body.state, body.reason]).toEqual(['failed', expect.stringMatching(/PDF/)])
    expect(
      (await ask('reviewer', { url: `${url}?state=failed` })).body.items.map((it: { id: string }) => it.id),
    ).toContain(id)
  })
})

describe('confirming it', () => {
  type Entry = Record<string, unknown> & { components: Record<string, unknown>[] }
  const confirm = (id: string, permits: object[], headers: Record<string, string> = {}) =>
    ask('reviewer', { method: 'POST', url: `${url}/${id}/transcription`, headers, body: { permits } })

  test('two permits of one paper, on two parcels: values as read keep the reading’s place and confidence', async () => {
    const { id, document, file } = await proposed('form-1986', 'form-2015')
    expect(document.proposals).toHaveLength(2)
    const parcels = [await newParcel(services), await newParcel(services)]
    const entries = file.papers.map(({ truth }) => truth.entry as unknown as Entry)
    const { status, body } = await confirm(
      id,
      entries.map((entry, index) => ({ parcel: parcels[index]!.number, proposal: index, entry })),
    )
    expect([status, body.document.state]).toEqual([201, 'confirmed'])
    expect(body.permits.map((it: { parcel: string }) => it.parcel)).toEqual(parcels.map((it) => it.id))
    expect(body.consequences).toHaveLength(2)
    const [permit] = body.permits
    const read = document.proposals[0].fields.find((it: { pointer: string }) => it.pointer === '/number')
    expect(permit.sources['/number']).toMatchObject({
      kind: 'document',
      document: id,
      page: read.page,
      words: read.words,
      confidence: read.confidence,
      confirmedBy: people.reviewer.account,
    })
    const asBuilt = (await ask('firm', { url: `${here}/parcels/${parcels[0]!.number}/as-built` })).body
      .asBuilt
    expect(asBuilt.components.length).toBe(entries[0]!.components.length)
    const revisions = (await ask('reviewer', { url: `${here}/permits/${permit.id}` })).body.revisions
    expect(revisions[0].transcription).toBe(body.transcription)
  })

  test('a mended value keeps the place and loses the confidence; a placed one has the place it was given', async () => {
    const { id, document, file } = await proposed('form-1986')
    const { number } = await newParcel(services)
    const entry = { ...file.papers[0]!.truth.entry, number: 'M-1', remarks: 'seen on the back' }
    const places = { '/remarks': { page: 1, words: 'on the back', box: { x: 0.1, y: 0.9, w: 0.3, h: 0.02 } } }
    const { body } = await confirm(id, [{ parcel: number, proposal: 0, entry, sources: places }])
    const read = document.proposals[0].fields.find((it: { pointer: string }) => it.pointer === '/number')
    const { sources } = body.permits[0]
    expect(sources['/number']).toMatchObject({ words: read.words, box: read.box, confidence: null })
    expect(sources['/remarks']).toMatchObject({ words: 'on the back', box: { y: 0.9 }, confidence: null })
  })

  test('is all or nothing, with every fault told', async () => {
    const { id, file } = await proposed('form-1986', 'form-1978')
    const { number } = await newParcel(services)
    const [first, second] = file.papers.map(({ truth }) => truth.entry)
    const refused = await confirm(id, [
      { parcel: number, proposal: 0, entry: first },
      { parcel: '99-9999-9999', proposal: 7, entry: { ...second, approvedOn: '2999-01-01' } },
    ])
    expect(refused.status).toBe(422)
    expect(refused.body.errors.map((it: { pointer: string }) => it.pointer)).toEqual([
      '/permits/1/parcel',
      '/permits/1/proposal',
      '/permits/1/entry/approvedOn',
    ])
    expect((await ask('reviewer', { url: `${here}/parcels/${number}` })).body.permits).toEqual([])
    expect((await ask('reviewer', { url: `${url}/${id}` })).body.state).toBe('proposed')
  })

  test('the same permit twice is told, in one paper as in the file', async () => {
    const { id, file } = await proposed('form-1986')
    const { number } = await newParcel(services)
    const permit = { parcel: number, proposal: 0, entry: file.papers[0]!.truth.entry }
    const twice = await confirm(id, [permit, permit])
    expect(twice.body.errors.map((it: { pointer: string }) => it.pointer)).toEqual([
      '/permits/1/entry/number',
    ])
    expect((await confirm(id, [permit])).status).toBe(201)
    expect((await confirm(id, [permit])).status).toBe(422)
  })

  test('by a version that has moved on is refused', async () => {
    const { id, file, document } = await proposed('form-1986')
    const { number } = await newParcel(services)
    const permit = { parcel: number, proposal: 0, entry: file.papers[0]!.truth.entry }
    expect((await confirm(id, [permit], { 'if-match': '"r1"' })).status).toBe(412)
    expect((await confirm(id, [permit], { 'if-match': `"r${document.revision}"` })).status).toBe(201)
  })

  test('before it is read is refused', async () => {
    const file = await paper('form-1986')
    const { id } = (await send({ file })).body.document
    const { number } = await newParcel(services)
    const refused = await confirm(id, [{ parcel: number, entry: file.papers[0]!.truth.entry }])
    expect([refused.status, refused.body.detail]).toEqual([409, expect.stringMatching(/still being read/)])
  })
})

describe('a page', () => {
  test('is shown as a picture of the width asked for, and is the same for ever', async () => {
    const { id } = await proposed('form-1986')
    const shown = await ask('reviewer', { url: `${url}/${id}/pages/1.png?width=400` })
    expect([shown.status, shown.headers['content-type']]).toEqual([200, 'image/png'])
    const bytes = (
      await app.inject({
        url: `${url}/${id}/pages/1.png?width=400`,
        headers: { authorization: `Bearer ${people.reviewer.token}` },
      })
    ).rawPayload
    // PNG, 5.2 and 11.2.2: the signature, then the width and height of the header.
    expect(bytes.subarray(0, 8)).toEqual(Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]))
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([400, 518])
    const again = await ask('reviewer', {
      url: `${url}/${id}/pages/1.png?width=400`,
      headers: { 'if-none-match': String(shown.headers.etag) },
    })
    expect(again.status).toBe(304)
  })

  test('that the paper has not, or of a file that is none, is told', async () => {
    const { id } = await proposed('form-1986')
    expect((await ask('reviewer', { url: `${url}/${id}/pages/2.png` })).status).toBe(404)
    expect((await ask('reviewer', { url: `${url}/${id}/pages/0.png` })).status).toBe(422)
    expect((await ask('firm', { url: `${url}/${id}/pages/1.png` })).status).toBe(404)
    const bytes = Buffer.from('%PDF-1.7\nnothing of it either')
    const broken = (await send({ file: { bytes, name: 'cut.pdf' } })).body.document
    expect((await ask('reviewer', { url: `${url}/${broken.id}/pages/1.png` })).status).toBe(409)
  })
})

test('a firm and an agent see no papers', async () => {
  const { id } = await proposed('form-1978')
  for (const who of ['firm', 'agent', 'stranger'] as const) {
    expect((await ask(who, { url: `${url}/${id}` })).status).toBe(404)
    expect((await ask(who, { url })).status).toBe(404)
  }
})

describe('what becomes of a paper beside being confirmed', () => {
  const act = (id: string, what: string, body: object, headers: Record<string, string> = {}) =>
    ask('reviewer', { method: 'POST', url: `${url}/${id}/${what}`, headers, body })
  const tag = ({ revision }: { revision: number }) => ({ 'if-match': `"r${revision}"` })

  test('it is set aside with a reason, and brought back with what was read', async () => {
    const { id, document } = await proposed('form-1978')
    expect((await act(id, 'aside', { reason: ' ' })).body.errors[0].pointer).toBe('/reason')
    const aside = await act(id, 'aside', { reason: 'A receipt.' }, tag(document))
    expect([aside.status, aside.body.state, aside.body.reason]).toEqual([200, 'set-aside', 'A receipt.'])
    expect(aside.headers.etag).toBe(`"r${aside.body.revision}"`)
    expect((await act(id, 'aside', { reason: 'Again.' })).status).toBe(409)
    const back = await act(id, 'return', {}, tag(aside.body))
    expect([back.status, back.body.state]).toEqual([200, 'proposed'])
    const now = await withProposals(id)
    expect(now.proposals).toEqual(document.proposals)
  })

  test('its cuts are moved, and each permit is proposed from its own pages', async () => {
    const { id, document } = await proposed('form-1986', 'form-2015')
    const joined = await act(id, 'cuts', { begins: [1] }, tag(document))
    expect((await withProposals(id)).proposals.map((it: { pages: number[] }) => it.pages)).toEqual([[1, 2]])
    const cut = await act(id, 'cuts', { begins: [2] }, { 'if-match': String(joined.headers.etag) })
    expect(cut.body.permits).toBe(2)
    expect((await withProposals(id)).proposals).toEqual(document.proposals)
    expect((await act(id, 'cuts', { begins: [3] })).body.errors[0].pointer).toBe('/begins')
  })

  test('of two people the slower is told, and nothing is changed', async () => {
    const { id, document } = await proposed('form-1986', 'letter')
    const first = await act(id, 'cuts', { begins: [1] }, tag(document))
    expect(first.status).toBe(200)
    for (const [what, body] of [
      ['aside', { reason: 'Late.' }],
      ['cuts', { begins: [2] }],
    ] as const)
      expect((await act(id, what, body, tag(document))).status).toBe(412)
    const now = (await ask('reviewer', { url: `${url}/${id}` })).body
    expect([now.state, now.revision]).toEqual(['proposed', first.body.revision])
  })
})
