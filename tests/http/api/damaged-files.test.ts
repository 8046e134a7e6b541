import { chmod, readFile, writeFile } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { expect, test } from 'vitest'
import { readPaper } from '../../../src/operations/documents/read-paper.ts'
import { lookThroughOriginals } from '../../../src/operations/upkeep/look-through-originals.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { originalsAtFault } from '../../../src/store/original-faults.ts'
import { testApp } from '../../support/app.ts'
import { typedPdf, typedPermit } from '../../support/dense-pdf.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatAgrees, newParcel, permit1974 } from '../../support/quillback.ts'

const { app, services, people, ask } = await testApp()
const here = '/v1/counties/quillback'
const parcel = await newParcel(services)
const at = `${here}/parcels/${parcel.number}`
await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permit1974 })

async function flip(hash: string): Promise<void> {
  const place = (await services.files.pathOf(hash))!
  const bytes = await readFile(place)
  bytes[bytes.length >> 1] = bytes[bytes.length >> 1]! ^ 1
  await chmod(place, 0o600)
  await writeFile(place, bytes)
}
const get = (who: 'reviewer' | 'firm', url: string) =>
  app.inject({ url, headers: { authorization: `Bearer ${people[who].token}` } })
const send = async (url: string, field: string, bytes: Buffer, type: string, who: 'reviewer' | 'firm') => {
  const form = new FormData()
  form.set(field, new Blob([new Uint8Array(bytes)], { type }), 'file')
  const body = new Response(form)
  return ask(who, {
    method: 'POST',
    url,
    headers: { 'content-type': body.headers.get('content-type')! },
    payload: Buffer.from(await body.arrayBuffer()),
  })
}
const look = () => lookThroughOriginals(services, new AbortController().signal, 0)

test('a letter with one bit that is another is never given out: it is printed again, to the byte', async () => {
  const { body } = await ask('reviewer', { method: 'POST', url: `${at}/letters`, body: { kind: 'status' } })
  const whole = (await get('reviewer', body.pdf)).rawPayload
  await flip(body.pdfSha256)
  expect((await look()).atFault).toBe(1)
  expect((await get('reviewer', body.pdf)).rawPayload.equals(whole)).toBe(true)
  expect(await look()).toEqual({ looked: 1, atFault: 0 })
})

test('a photo that is damaged is told, and whole again when it is sent again', async () => {
  const { id } = (await ask('firm', { method: 'POST', url: `${at}/findings`, body: inspectionThatAgrees }))
    .body
  const picture = await pictureWith()
  const sent = () => send(`${here}/findings/${id}/photos`, 'photo', picture, 'image/jpeg', 'firm')
  const photo = (await sent()).body
  const { shown_hash: shown } = await administer(services.database, (tx) =>
    tx.selectFrom('photo').select('shown_hash').where('id', '=', photo.id).executeTakeFirstOrThrow(),
  )
  await flip(shown)
  const told = await get('firm', `${here}/photos/${photo.id}`)
  expect([told.statusCode, told.json().type]).toEqual([500, '/problems/damaged-file'])
  expect((await look()).atFault).toBe(1)
  const figures = (await app.inject('/metrics')).body
  expect(figures).toMatch(/asfound_originals_at_fault\{state="damaged"\} 1/)
  expect((await sent()).status).toBe(201)
  expect((await get('firm', `${here}/photos/${photo.id}`)).statusCode).toBe(200)
  expect((await look()).atFault).toBe(0)
})

test('another paper in a paper’s place is drawn and read as nothing, and the good one heals it', async () => {
  const paper = typedPdf([typedPermit(7)])
  const upload = () => send(`${here}/documents`, 'file', paper, 'application/pdf', 'reviewer')
  const { document } = (await upload()).body
  const { content_hash: hash } = await administer(services.database, (tx) =>
    tx.selectFrom('document').select('content_hash').where('id', '=', document.id).executeTakeFirstOrThrow(),
  )
  const place = (await services.files.pathOf(hash))!
  await chmod(place, 0o600)
  await writeFile(place, typedPdf([typedPermit(8)]))
  const page = `${here}/documents/${document.id}/pages/1.png`
  expect((await get('reviewer', page)).json().type).toBe('/problems/damaged-file')
  expect((await upload()).status).toBe(202)
  expect((await get('reviewer', page)).statusCode).toBe(200)
  // Once more it is the same file, and nothing is amiss.
  expect((await upload()).status).toBe(409)
  await flip(hash)
  const read = await readPaper(services, {
    id: document.id,
    actor: people.reviewer,
    data: { document: document.id },
    report: async () => {},
    signal: new AbortController().signal,
  })
  expect(read.state).toBe('failed')
  expect((await ask('reviewer', { url: `${here}/documents/${document.id}` })).body.reason).toMatch(/damaged/)
})

test('of a large file the end is kept back until all of it was looked at', async () => {
  const large = Buffer.alloc(25 * 1_048_576, 'a')
  const { hash } = await services.files.keep(Readable.from([large]))
  expect((await buffer((await services.files.read(hash))!)).equals(large)).toBe(true)
  await flip(hash)
  let got = 0
  await expect(
    (async () => {
      for await (const piece of (await services.files.read(hash))!) got += (piece as Buffer).length
    })(),
  ).rejects.toThrow(/is damaged/)
  expect(got).toBeLessThan(large.length)
})

test('a file that is gone is found, and no fault any more when it is back', async () => {
  const { rm } = await import('node:fs/promises')
  const { body } = await ask('reviewer', { method: 'POST', url: `${at}/letters`, body: { kind: 'brief' } })
  await rm((await services.files.pathOf(body.pdfSha256))!)
  await look()
  const faults = () => administer(services.database, originalsAtFault)
  expect(await faults()).toContainEqual({ hash: body.pdfSha256, state: 'missing' })
  expect((await get('reviewer', body.pdf)).statusCode).toBe(200)
  await look()
  expect((await faults()).map(({ hash }) => hash)).not.toContain(body.pdfSha256)
})
