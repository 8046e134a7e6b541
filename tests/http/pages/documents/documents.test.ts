import type { InjectOptions } from 'fastify'
import { describe, expect, test } from 'vitest'
import { testApp } from '../../../support/app.ts'
import { wholeDocument } from '../../../support/whole-document.ts'
import { permitsOfParcel } from './filed.ts'
import { formOn } from './form-on.ts'
import { waitingPaper } from './waiting.ts'

const service = await testApp({ settings: { ANSWERS: 'fast' } })
const { app, services, people } = service
const { reviewer } = people
const here = '/counties/quillback/documents'

const ask = (request: InjectOptions, who: 'reviewer' | 'firm' | 'agent' = 'reviewer') =>
  app.inject({
    ...request,
    headers: { accept: 'text/html', authorization: `Bearer ${people[who].token}`, ...request.headers },
  })
const post = (url: string, fields: Readonly<Record<string, string>>) =>
  ask({
    method: 'POST',
    url,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(fields).toString(),
  })
const page = async (id: string, query = '') => (await ask({ url: `${here}/${id}${query}` })).body
const stateOf = async (id: string) => wholeDocument(services, reviewer, id)
/** The form as it came, with everything to look at ticked. */
const looked = async (id: string) => {
  const form = formOn(await page(id))
  return {
    ...form.values,
    ...Object.fromEntries(form.boxes.filter((it) => it.startsWith('seen')).map((it) => [it, 'on'])),
  }
}
const confirm = (id: string, fields: Readonly<Record<string, string>>) =>
  post(`${here}/${id}/transcription`, fields)

describe('confirming a paper', () => {
  test('as it was read makes the permit that the paper says, and leads to the next that waits', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const next = await waitingPaper(service, reviewer, 'form-2015')
    const sent = await confirm(id, await looked(id))
    expect([sent.statusCode, sent.headers.location]).toEqual([303, `${here}/${next.id}?done=${id}`])
    const { truth } = papers[0]!
    const [permit] = await permitsOfParcel(services, reviewer, truth.parcelNumber)
    expect(permit!.record.number).toBe(truth.entry.number)
    expect(permit!.record.bedrooms).toBe(truth.entry.bedrooms)
    expect(permit!.record.components).toHaveLength(truth.entry.components.length)
    expect(permit!.sources['/number']).toMatchObject({
      kind: 'document',
      document: id,
      confirmedBy: reviewer.account,
    })
    expect(await page(next.id, `?done=${id}`)).toMatch(/role="status".*is confirmed/)
    await post(`${here}/${next.id}/aside`, {
      version: String((await stateOf(next.id)).document.revision),
      reason: 'Later.',
    })
  })

  test('asks for each value marked “check this”, and keeps what was typed', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const { values, boxes } = formOn(await page(id))
    const toLookAt = boxes.filter((it) => it.startsWith('seen'))
    expect(toLookAt.length).toBeGreaterThan(0)
    const sent = await confirm(id, { ...values, '/remarks': 'kept <b>as typed</b>' })
    expect(sent.statusCode).toBe(422)
    expect(sent.body.match(/Check this against the scan/g)).toHaveLength(toLookAt.length)
    expect(sent.body).toContain('kept &lt;b&gt;as typed&lt;/b&gt;')
    expect((await stateOf(id)).transcriptions).toEqual([])
  })

  test('tells every fault at once, beside its field and in plain words', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const sent = await confirm(id, {
      ...(await looked(id)),
      '/parcel': '99-9999-9999',
      '/number': '',
      '/bedrooms': 'some',
      '/components/0/capacity': 'a thousand',
    })
    expect(sent.statusCode).toBe(422)
    const { faults, values } = formOn(sent.body)
    expect(faults['/number']).toBe('This is required. Enter what the document says.')
    expect(faults['/bedrooms']).toContain('is not a count: write a whole number, as in 3 or three')
    expect(faults['/components/0/capacity']).toMatch(/a thousand|gal/)
    expect(values['/components/0/capacity']).toBe('a thousand')
    expect(faults['/parcel']).toMatch(/no parcel 99-9999-9999/)
    const again = await confirm(id, { ...(await looked(id)), '/parcel': '99-9999-9999' })
    expect(formOn(again.body).faults['/parcel']).toMatch(/no parcel 99-9999-9999/)
  })

  test('keeps what was read beside what was made of it: mended, unreadable, left out, renamed', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const fields = await looked(id)
    const parts = Number(fields.parts)
    const sent = await confirm(id, {
      ...fields,
      '/bedrooms': '7',
      '/soilTexture': '? clay or loam',
      '/components/0/tag': 'the old tank',
      [`leave/components/${parts - 1}`]: 'on',
    })
    expect(sent.statusCode).toBe(303)
    const read = await stateOf(id)
    const [permit] = await permitsOfParcel(services, reviewer, papers[0]!.truth.parcelNumber)
    expect(permit!.record.bedrooms).toBe(7)
    expect(permit!.record.soilTexture).toBeNull()
    expect(permit!.record.unreadable).toEqual([{ pointer: '/soilTexture', note: 'clay or loam' }])
    expect(permit!.record.components).toHaveLength(parts - 1)
    const proposed = read.proposals[0]!.fields
    const at = (pointer: string) => proposed.find((it) => it.pointer === pointer)!
    expect(permit!.sources['/bedrooms']).toMatchObject({ box: at('/bedrooms').box, confidence: null })
    expect(permit!.sources['/number']).toMatchObject({ confidence: at('/number').confidence })
    expect(permit!.sources['/components/0/capacity']).toMatchObject({ box: at('/components/0/capacity').box })
    // The proposal stands as it was read, and the transcription as it was sent.
    expect(at('/bedrooms').value).toBe(papers[0]!.truth.entry.bedrooms)
    expect(JSON.stringify(read.transcriptions[0]!.body)).toContain('"bedrooms":7')
    const body = await page(id)
    expect(body).toMatch(new RegExp(`Bedrooms</th><td>7</td><td><b>${at('/bedrooms').value}</b>`))
    expect(body).toContain('values were corrected')
  })

  test('a part that was not read is added, and taken in once something is written into it', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const fields = await looked(id)
    const more = await confirm(id, { ...fields, act: 'part', '/bedrooms': '6' })
    expect(more.statusCode).toBe(200)
    const { values } = formOn(more.body)
    const added = `/components/${fields.parts}`
    expect(values['/bedrooms']).toBe('6')
    expect(values[`${added}/tag`]).toBe('')
    const boxes = Object.fromEntries(Object.entries(fields).filter(([name]) => name.startsWith('seen')))
    const sent = await confirm(id, {
      ...values,
      ...boxes,
      [`${added}/tag`]: 'pump',
      [`${added}/kind`]: 'pump-chamber',
    })
    expect(sent.statusCode).toBe(303)
    const [permit] = await permitsOfParcel(services, reviewer, papers[0]!.truth.parcelNumber)
    expect(permit!.record.components.map(({ kind }) => kind)).toContain('pump-chamber')
  })
})

describe('two people on one paper', () => {
  test('the slower is shown both side by side, and nothing of either is lost', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const mine = { ...(await looked(id)), '/bedrooms': '6' }
    expect((await confirm(id, { ...(await looked(id)), '/bedrooms': '5' })).statusCode).toBe(303)
    const late = await confirm(id, mine)
    expect(late.statusCode).toBe(412)
    expect(late.body).toContain('Someone else confirmed this permit while you had it open')
    expect(late.body).toMatch(/Bedrooms<\/th><td>6<\/td><td>5</)
    expect(formOn(late.body).values['/bedrooms']).toBe('6')
    // Pressed again, with the version that was shown, it still makes no second permit.
    const pressed = await confirm(id, { ...formOn(late.body).values, '/number': 'another' })
    expect(pressed.statusCode).toBe(412)
    expect(await permitsOfParcel(services, reviewer, papers[0]!.truth.parcelNumber)).toHaveLength(1)
  })

  test('a form sent twice does its work once, and goes on', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986')
    const fields = await looked(id)
    await confirm(id, fields)
    expect((await confirm(id, fields)).statusCode).toBe(303)
    expect(await permitsOfParcel(services, reviewer, papers[0]!.truth.parcelNumber)).toHaveLength(1)
  })

  test('a form without a version writes over nothing', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const { version: _, ...fields } = await looked(id)
    expect((await confirm(id, fields)).statusCode).toBe(412)
  })
})

describe('setting aside', () => {
  test('wants a reason, is seen in the list, and can be brought back', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986')
    const version = String((await stateOf(id)).document.revision)
    const without = await post(`${here}/${id}/aside`, { version, reason: '  ' })
    expect([without.statusCode, without.body.includes('Enter a reason.')]).toEqual([422, true])
    expect(
      (await post(`${here}/${id}/aside`, { version, reason: 'The second page is missing.' })).statusCode,
    ).toBe(303)
    expect((await ask({ url: `${here}?state=set-aside` })).body).toContain('The second page is missing.')
    expect((await post(`${here}/${id}/aside`, { version, reason: 'Again.' })).statusCode).toBe(409)
    const body = await page(id)
    expect(body).toContain('Set aside: The second page is missing.')
    const back = await post(`${here}/${id}/return`, { version: formOn(body).values.version! })
    expect([back.statusCode, (await stateOf(id)).document.state]).toEqual([303, 'proposed'])
    expect((await confirm(id, await looked(id))).statusCode).toBe(303)
  })
})

describe('one file with two permits', () => {
  test('is confirmed one after the other; then the cuts stand, and the next paper comes', async () => {
    const { id, papers } = await waitingPaper(service, reviewer, 'form-1986', 'form-2015')
    expect(await page(id)).toContain('Permit 1 of 2 in this file')
    const first = await confirm(id, await looked(id))
    expect(first.headers.location).toBe(`${here}/${id}?done=${id}`)
    const body = await page(id)
    expect(body).toContain('Permit 2 of 2 in this file')
    expect(body).toContain('The split cannot change now')
    const { version } = formOn(body).values
    expect((await post(`${here}/${id}/cuts`, { version: version!, begins: '1' })).statusCode).toBe(409)
    expect((await confirm(id, await looked(id))).statusCode).toBe(303)
    expect((await stateOf(id)).document.state).toBe('confirmed')
    for (const { truth } of papers) {
      const filed = await permitsOfParcel(services, reviewer, truth.parcelNumber)
      expect(filed.map(({ record }) => record.number)).toEqual([truth.entry.number])
    }
  })

  test('has its cuts moved, and each permit is read again from its own pages', async () => {
    const { id } = await waitingPaper(service, reviewer, 'form-1986', 'form-2015')
    const cut = async (begins: string) =>
      post(`${here}/${id}/cuts`, { version: String((await stateOf(id)).document.revision), begins })
    for (const [typed, says] of [
      ['one', /Enter page numbers/],
      ['1, 9', /there is no page 9: the document has 2/],
    ] as const) {
      const wrong = await cut(typed)
      expect([wrong.statusCode, wrong.body]).toEqual([422, expect.stringMatching(says)])
      expect(wrong.body).toContain(`value="${typed}"`)
    }
    expect((await cut('1')).statusCode).toBe(303)
    expect((await stateOf(id)).proposals.map((it) => it.pages)).toEqual([[1, 2]])
    expect(await page(id)).toContain('2 pages, one permit')
    expect((await cut('1, 2')).statusCode).toBe(303)
    expect((await stateOf(id)).proposals.map((it) => it.pages)).toEqual([[1], [2]])
    const late = await post(`${here}/${id}/cuts`, { version: '1', begins: '1' })
    expect([late.statusCode, late.body.includes('The split was not changed')]).toEqual([409, true])
  })
})

test('is there for reviewers alone', async () => {
  const { id } = await waitingPaper(service, reviewer, 'form-1986')
  for (const who of ['firm', 'agent'] as const) {
    for (const url of [here, `${here}/${id}`]) expect((await ask({ url }, who)).statusCode).toBe(404)
  }
})

test('weighs under 60 kB', async () => {
  const { id } = await waitingPaper(service, reviewer, 'card-1958')
  const { rawPayload } = await ask({ url: `${here}/${id}`, headers: { 'accept-encoding': 'gzip' } })
  expect(rawPayload.length).toBeLessThan(60_000)
})
