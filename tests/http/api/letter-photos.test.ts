import { createHash } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { openLetter } from '../../letters/open-letter.ts'
import { testApp } from '../../support/app.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'
import { uploading } from '../../support/upload.ts'

const { app, services, people, ask } = await testApp()
const here = '/v1/counties/quillback'
const parcel = await newParcel(services)
const at = `${here}/parcels/${parcel.number}`
const post = async (who: 'reviewer' | 'firm', url: string, body?: object) =>
  (await ask(who, { method: 'POST', url, ...(body ? { body } : {}) })).body
await post('reviewer', `${at}/permits`, permit1974)
const draft = await post('firm', `${at}/findings`, inspectionThatDiffers)
const label = inspectionThatDiffers.components?.[0]?.label ?? ''
const file = { bytes: await pictureWith({}, 'jpeg', [3000, 2250]), name: 'a.jpg' }
const photo = (
  await ask(
    'firm',
    await uploading(`${here}/findings/${draft.id}/photos`, {
      photo: file,
      component: label,
      takenAt: '2026-10-12T09:20:00-05:00',
      keepPlace: 'true',
      lat: '41.5',
      lon: '-90.12',
    }),
  )
).body
await post('firm', `${here}/findings/${draft.id}/submission`)
const report = await post('reviewer', `${at}/letters`, { kind: 'report' })
const pdfOf = async (url: string): Promise<Buffer> =>
  (await app.inject({ url, headers: { authorization: `Bearer ${people.reviewer.token}` } })).rawPayload
const bytes = await pdfOf(report.pdf)
const sha256 = (it: Uint8Array) => createHash('sha256').update(it).digest('hex')

test('the photo was taken', () => expect(photo).toMatchObject({ place: { lat: 41.5 } }))

test('a report shows the photos of its inspection, with what they show in words and the hash of each as it was taken', async () => {
  const { text, alternatives, accessibilityPart } = await openLetter(bytes)
  const words = text.join(' ')
  expect(words).toContain('Photos of the inspection')
  expect(words.replaceAll(' ', '')).toContain(photo.hash)
  expect(alternatives).toContain(`Photo of ${label}, taken 2026-10-12 09:20`)
  expect(accessibilityPart).toBe('1')
})

test('small, and with nothing of the camera’s or the place in it', () => {
  expect(bytes.includes('/DCTDecode')).toBe(true)
  for (const note of ['Exif', 'Invented', 'GPS']) expect(bytes.includes(note), note).toBe(false)
  expect(bytes.length).toBeLessThan(400_000)
})

test('is printed again to the byte where its file was lost', async () => {
  expect(sha256(bytes)).toBe(report.pdfSha256)
  await rm((await services.files.pathOf(report.pdfSha256))!)
  expect(sha256(await pdfOf(report.pdf))).toBe(report.pdfSha256)
})
