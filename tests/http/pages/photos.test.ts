import { describe, expect, test } from 'vitest'
import { presentPhotos } from '../../../src/http/pages/parcel/photos.ts'
import type { Photo } from '../../../src/store/photos.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatDiffers, newParcel, permit1974 } from '../../support/quillback.ts'
import { uploading } from '../../support/upload.ts'

const { app, services, people, ask } = await testApp()
const here = '/v1/counties/quillback'
const parcel = await newParcel(services)
const at = `${here}/parcels/${parcel.number}`
const post = async (who: keyof People, url: string, body?: object) =>
  (await ask(who, { method: 'POST', url, ...(body ? { body } : {}) })).body
await post('reviewer', `${at}/permits`, permit1974)
const draft = await post('firm', `${at}/findings`, inspectionThatDiffers)
const label = inspectionThatDiffers.components?.[0]?.label ?? ''
const add = async (fields: Readonly<Record<string, string>>, width: number) => {
  const file = { bytes: await pictureWith({}, 'jpeg', [width, 240]), name: 'a.jpg' }
  const sent = await uploading(`${here}/findings/${draft.id}/photos`, { photo: file, ...fields })
  return (await ask('firm', sent)).body.id as string
}
const ofTank = await add({ component: label, takenAt: '2026-10-12T09:20:00-05:00' }, 320)
const page = async (who: keyof People): Promise<string> =>
  (
    await app.inject({
      url: `/counties/quillback/parcels/${parcel.number}`,
      headers: { accept: 'text/html', authorization: `Bearer ${people[who].token}` },
    })
  ).body
const small = (id: string) => `<img src="${here}/photos/${id}?size=small"`

describe('photos on a parcel’s page', () => {
  test('are not there before the inspection is submitted', async () => {
    expect(await page('reviewer')).toContain('No photos.')
    expect(await page('firm')).not.toContain(small(ofTank))
  })

  test('stand by inspection and component and open the picture; an agent and a rival see none', async () => {
    await post('firm', `${here}/findings/${draft.id}/submission`)
    const ofSite = await add({}, 300)
    const shown = await page('reviewer')
    expect(shown).toContain(`<a href="${here}/photos/${ofTank}">${small(ofTank)}`)
    expect(shown).toContain('9:20')
    expect(shown.indexOf(small(ofTank))).toBeLessThan(shown.indexOf(small(ofSite)))
    expect(shown).toContain('<dt>The whole site</dt>')
    expect(await page('firm')).toContain(small(ofSite))
    for (const other of ['agent', 'rival'] as const) expect(await page(other)).not.toContain('/photos/')
  })
})

test('several of one component are told apart in words; one of what the inspection does not name is not lost', () => {
  const photo = (id: string, component: string | null): Photo => ({
    id,
    findings: 'v',
    component,
    contentHash: id,
    smallHash: null,
    printedHash: null,
    shownHash: id,
    mediaType: 'image/jpeg',
    bytes: 1,
    width: 320,
    height: 240,
    orientation: 1,
    takenAt: null,
    place: null,
    addedAt: new Date(0),
  })
  const inspection = {
    id: 'v',
    firmName: null,
    record: { ...inspectionThatDiffers, components: [] } as never,
  }
  const [shown] = presentPhotos([inspection], [photo('1', null), photo('2', 'well'), photo('3', 'well')])
  expect(shown?.parts.map(({ about, photos }) => [about, photos.map(({ alt }) => alt)])).toEqual([
    ['Well', ['Well, photo 1 of 2', 'Well, photo 2 of 2']],
    ['The whole site', ['The whole site']],
  ])
})
