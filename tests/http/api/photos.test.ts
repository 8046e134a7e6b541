import { createHash, randomUUID } from 'node:crypto'
import { buffer as readAll } from 'node:stream/consumers'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatAgrees, newParcel } from '../../support/quillback.ts'

const { app, services, people, ask } = await testApp()
const parcel = await newParcel(services)
const here = '/v1/counties/quillback'
const draftOf = async (): Promise<{ readonly id: string }> =>
  (
    await ask('firm', {
      method: 'POST',
      url: `${here}/parcels/${parcel.number}/findings`,
      body: inspectionThatAgrees,
    })
  ).body
const handIn = (id: string) => ask('firm', { method: 'POST', url: `${here}/findings/${id}/submission` })

type Fields = Readonly<Record<string, string>>
/** A multipart body by the platform's own writer. */
async function form(picture: Uint8Array | null, fields: Fields = {}) {
  const data = new FormData()
  for (const [name, value] of Object.entries(fields)) data.set(name, value)
  if (picture) data.set('photo', new Blob([new Uint8Array(picture)], { type: 'image/jpeg' }), 'IMG_0001.jpg')
  const response = new Response(data)
  return { payload: Buffer.from(await response.arrayBuffer()), type: response.headers.get('content-type')! }
}

async function add(
  who: keyof People,
  findings: string,
  picture: Uint8Array | null,
  fields?: Fields,
  key?: string,
) {
  const { payload, type } = await form(picture, fields)
  const headers = { 'content-type': type, ...(key ? { 'idempotency-key': key } : {}) }
  return ask(who, { method: 'POST', url: `${here}/findings/${findings}/photos`, headers, payload })
}

const get = async (who: keyof People, id: string, size?: string) =>
  app.inject({
    url: `${here}/photos/${id}${size ? `?size=${size}` : ''}`,
    headers: { authorization: `Bearer ${people[who].token}` },
  })

describe('a photo of an inspection', () => {
  test('is kept with its time and turn, and given out upright with nothing but the image', async () => {
    const { id } = await draftOf()
    const picture = await pictureWith({ orientation: 6 })
    const added = await add('firm', id, picture, { component: 'tank', takenAt: '2026-10-12T09:20:00-05:00' })
    expect(added.status).toBe(201)
    expect(added.body).toMatchObject({
      findings: id,
      component: 'tank',
      orientation: 6,
      takenAt: '2026-10-12T09:20:00-05:00',
      place: null,
      mediaType: 'image/jpeg',
      width: 240,
      height: 320,
    })
    const shown = await get('firm', added.body.id)
    expect([shown.statusCode, shown.headers['content-type']]).toEqual([200, 'image/jpeg'])
    const told = await sharp(shown.rawPayload).metadata()
    expect([told.exif, told.width, told.height]).toEqual([undefined, 240, 320])
    expect(
      (await sharp((await get('firm', added.body.id, 'small')).rawPayload).metadata()).exif,
    ).toBeUndefined()
    const list = await ask('firm', { url: `${here}/findings/${id}/photos` })
    expect(list.body.items).toEqual([added.body])
  })

  test('the place only where it was allowed: else neither told, nor in what is kept', async () => {
    const { id } = await draftOf()
    const kept = async (hash: string) => readAll((await services.files.read(hash))!)
    const without = await add('firm', id, await pictureWith())
    expect((await sharp(await kept(without.body.hash)).metadata()).exif).toBeUndefined()
    const allowed = { keepPlace: 'true', lat: '41.5', lon: '-90.1', radiusFt: '16' }
    const withPlace = await add('firm', id, await pictureWith(), allowed)
    expect(withPlace.body.place).toEqual({ lat: 41.5, lon: -90.1, radiusFt: 16 })
    const original = await kept(withPlace.body.hash)
    expect(original).toEqual(await pictureWith())
    expect(createHash('sha256').update(original).digest('hex')).toBe(withPlace.body.hash)
    expect((await get('firm', withPlace.body.id, 'original')).rawPayload).toEqual(original)
  })

  test('sent twice, it is there once: by its key, and by its content', async () => {
    const { id } = await draftOf()
    const [picture, key] = [await pictureWith(), randomUUID()]
    const first = await add('firm', id, picture, { component: 'tank' }, key)
    const again = await add('firm', id, picture, { component: 'tank' }, key)
    expect([again.status, again.body, again.headers['idempotency-replayed']]).toEqual([
      201,
      first.body,
      'true',
    ])
    const anew = await add('firm', id, picture, { component: 'tank' }, randomUUID())
    expect(anew.body.id).toBe(first.body.id)
    expect((await ask('firm', { url: `${here}/findings/${id}/photos` })).body.items).toHaveLength(1)
  })

  test('a key that was used for another picture is refused', async () => {
    const { id } = await draftOf()
    const key = randomUUID()
    await add('firm', id, await pictureWith(), {}, key)
    const other = await add('firm', id, await pictureWith({}, 'jpeg', [64, 48]), {}, key)
    expect([other.status, other.body.type]).toEqual([422, '/problems/key-reused'])
  })

  test('taken away from a draft; what was submitted keeps its own and may get more', async () => {
    const { id } = await draftOf()
    const photo = (await add('firm', id, await pictureWith())).body
    expect((await ask('firm', { method: 'DELETE', url: `${here}/photos/${photo.id}` })).status).toBe(204)
    expect((await get('firm', photo.id)).statusCode).toBe(404)
    const kept = (await add('firm', id, await pictureWith())).body
    await handIn(id)
    const refused = await ask('firm', { method: 'DELETE', url: `${here}/photos/${kept.id}` })
    expect([refused.status, refused.body.detail]).toEqual([409, expect.stringMatching(/submitted/)])
    expect((await add('firm', id, await pictureWith({}, 'png'))).status).toBe(201)
  })

  test('its firm sees it; a reviewer once it is submitted, never the original; nobody else at all', async () => {
    const { id } = await draftOf()
    const { id: photo } = (await add('firm', id, await pictureWith())).body
    const seen = async (size?: string) =>
      Object.fromEntries(
        await Promise.all(
          (['firm', 'rival', 'reviewer', 'agent', 'stranger'] as const).map(
            async (who) => [who, (await get(who, photo, size)).statusCode] as const,
          ),
        ),
      )
    const nobody = { rival: 404, reviewer: 404, agent: 404, stranger: 404 }
    expect(await seen()).toEqual({ ...nobody, firm: 200 })
    await handIn(id)
    expect(await seen()).toEqual({ ...nobody, firm: 200, reviewer: 200 })
    expect(await seen('small')).toEqual({ ...nobody, firm: 200, reviewer: 200 })
    expect(await seen('original')).toEqual({ ...nobody, firm: 200 })
    expect((await add('rival', id, await pictureWith())).status).toBe(404)
    expect((await add('reviewer', id, await pictureWith())).status).toBe(403)
    expect((await ask('rival', { method: 'DELETE', url: `${here}/photos/${photo}` })).status).toBe(404)
    expect((await ask('rival', { url: `${here}/findings/${id}/photos` })).status).toBe(404)
  })

  test.each([
    ['no picture', null, {}, '/photo', /is missing/],
    ['text', Buffer.from('not a picture'), {}, '/photo', /JPEG, PNG or WebP/],
    ['a place nobody allowed', 'picture', { lat: '41', lon: '-90' }, '/keepPlace', /not allowed/],
    ['half a place', 'picture', { keepPlace: 'true', lat: '41' }, '/lon', /both/],
    ['a moment without an offset', 'picture', { takenAt: '2026-10-12 09:14' }, '/takenAt', /offset/],
  ] as const)('%s is refused with its pointer', async (_, picture, fields, pointer, says) => {
    const { id } = await draftOf()
    const answer = await add('firm', id, picture === 'picture' ? await pictureWith() : picture, fields)
    expect(answer.status).toBe(422)
    expect(answer.body.errors).toEqual([{ in: 'body', pointer, message: expect.stringMatching(says) }])
  })

  test('too large, and not multipart', async () => {
    const { id } = await draftOf()
    const large = await add('firm', id, Buffer.alloc(21 * 1_048_576))
    expect([large.status, large.body.detail]).toEqual([413, expect.stringMatching(/20 MB/)])
    const json = await ask('firm', { method: 'POST', url: `${here}/findings/${id}/photos`, body: {} })
    expect(json.status).toBe(415)
  })
})
