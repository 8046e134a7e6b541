import { describe, expect, test } from 'vitest'
import { permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { pictureWith } from '../../support/pictures.ts'
import { inspectionThatAgrees, newParcel, standingClock } from '../../support/quillback.ts'

const { clock } = standingClock('2026-10-12T15:00:00Z')
const { app, services, people, ask } = await testApp({ clock })
const api = '/v1/counties/quillback'

async function parcelWithPermit(): Promise<{ readonly number: string; readonly at: string }> {
  const { number } = await newParcel(services)
  await ask('reviewer', { method: 'POST', url: `${api}/parcels/${number}/permits`, body: permitExample })
  return { number, at: `/counties/quillback/parcels/${number}/inspection` }
}

const bearer = (who: keyof People) => ({ authorization: `Bearer ${people[who].token}` })
const get = (url: string, who: keyof People = 'firm', headers: Record<string, string> = {}) =>
  app.inject({ url, headers: { ...bearer(who), accept: 'text/html', ...headers } })
const post = (url: string, fields: Record<string, string>, who: keyof People = 'firm') =>
  app.inject({
    method: 'POST',
    url,
    headers: { ...bearer(who), accept: 'text/html', 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(fields).toString(),
  })
/** The version that the form on a page was made from. */
function versionIn(page: string): Record<string, string> {
  const of = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(page)?.[1]
  const [draft, revision] = [of('draft'), of('revision')]
  return draft && revision ? { draft, revision } : {}
}
const versionAt = async (url: string) => versionIn((await get(url)).body)
const START = {
  step: 'start',
  to: 'next',
  inspectedOn: '2026-10-12',
  bedroomsCounted: '3',
  ground: 'dry',
  backup: 'no',
  'reference.a': 'rear left corner',
  'reference.b': 'rear right corner',
  'reference.wall': 'rear',
  'reference.baseline': '36 ft',
  'reference.baseline.how': 'ground-tape',
}
const TANK = {
  step: 'tank',
  to: 'next',
  outcome: 'found',
  opened: 'cover-off',
  'levelAboveOutlet.side': 'at',
  shape: 'rectangular',
  material: 'concrete',
  length: '7\'-10"',
  width: '4\'-4"',
  liquidDepth: '4\'-0"',
  'liquidDepth.how': 'liquid-level-rule',
}
const PIT = { step: 'pit', to: 'next', outcome: 'found' }
const findingsOf = async (number: string) =>
  (await ask('firm', { url: `${api}/parcels/${number}/findings` })).body.items

describe('the form without a script', () => {
  test('a whole inspection: each step is saved and leads to the next; submitted, it counts', async () => {
    const { number, at } = await parcelWithPermit()
    const first = await get(at)
    expect([first.statusCode, first.body]).toEqual([200, expect.stringContaining('Never enter a tank')])
    const begun = await post(at, START)
    expect([begun.statusCode, begun.headers.location]).toEqual([303, `${at}?step=tank`])
    const tank = await get(`${at}?step=tank`)
    expect(tank.body).toMatch(/On record:<\/b> ?.*1,000 gal/s)
    expect(tank.body).not.toMatch(/value="1,000 gal"/)
    const saved = await post(at, { ...TANK, ...versionIn(tank.body) })
    expect(saved.headers.location).toBe(`${at}?step=line`)
    expect((await get(`${at}?step=tank`)).body).toMatch(/<b>1,01\d ± \d\d gal<\/b>/)
    const back = await post(at, { step: 'line', to: 'back', ...(await versionAt(`${at}?step=line`)) })
    expect(back.headers.location).toBe(`${at}?step=tank`)
    const pit = { step: 'pit', to: 'next', outcome: 'not-reached', notReachedBecause: 'buried' }
    expect((await post(at, { ...pit, ...(await versionAt(at)) })).headers.location).toBe(`${at}?step=more`)
    const review = await get(`${at}?step=review`)
    expect(review.body).toMatch(/One thing is not answered/)
    const handed = await post(at, {
      step: 'review',
      to: 'next',
      notes: 'Two dogs.\r\nGate sticks.',
      ...versionIn(review.body),
    })
    expect(handed.headers.location).toBe(`${at}?step=sent`)
    const [it] = await findingsOf(number)
    expect([
      it.state,
      it.record.notes,
      it.record.components.map(({ outcome }: { outcome: string }) => outcome),
    ]).toEqual(['submitted', 'Two dogs.\nGate sticks.', ['found', 'not-reached']])
    expect((await get(`${at}?step=sent`)).body).toContain('Your findings are submitted')
  })

  test('what can’t be read comes back as it was typed, with the reason beside it, and nothing is saved', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, START)
    const version = await versionAt(at)
    const again = await post(at, { ...TANK, width: '4-6', note: '<b>wet</b>', ...version })
    expect(again.statusCode).toBe(422)
    expect(again.body).toMatch(/id="f-width-fault"[^>]*>[^<]*may be one length or the two ends of a range/)
    expect(again.body).toMatch(
      /id="f-width" name="width" value="4-6"[^>]*aria-invalid="true" aria-describedby="f-width-fault"/,
    )
    expect(again.body).toContain('value="7&#39;-10&quot;"')
    expect(again.body).toContain('&lt;b&gt;wet&lt;/b&gt;')
    expect((await findingsOf(number))[0].record.components).toEqual([])
  })

  test('a day that is still to come, and half a tie', async () => {
    const { at } = await parcelWithPermit()
    const ahead = await post(at, { ...START, inspectedOn: '2026-10-13' })
    expect([ahead.statusCode, ahead.body]).toEqual([
      422,
      expect.stringMatching(/f-inspectedOn-fault[^>]*>2026-10-13 is in the future/),
    ])
    const half = await post(at, { ...TANK, 'tie.a': '18 ft' })
    expect(half.body).toMatch(/id="f-tie-b-fault"[^>]*>a place needs both ties/)
  })

  test('saved in between by somebody else: both are shown side by side, and the choice is kept', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, START)
    const old = await versionAt(at)
    await post(at, { ...TANK, ...old })
    const late = await post(at, { ...TANK, length: '8 ft', ...old })
    expect(late.statusCode).toBe(409)
    expect(late.body).toMatch(/Tank: Inside length/)
    expect(late.body).toMatch(/8 ft \(tape, inside\).*7&#39;-10&quot; \(tape, inside\)/s)
    const stands = async () => (await findingsOf(number))[0].record.components[0].length.asWritten
    expect(await stands()).toBe('7\'-10"')
    const settled = {
      ...TANK,
      length: '8 ft',
      to: 'settle',
      'keep:tank/length': 'mine',
      ...versionIn(late.body),
    }
    expect((await post(at, settled)).headers.location).toBe(`${at}?step=tank`)
    expect(await stands()).toBe('8 ft')
    expect((await post(at, { ...TANK, length: '9 ft', ...old, to: 'keep-theirs' })).statusCode).toBe(303)
    expect(await stands()).toBe('8 ft')
  })

  test('pressed twice, it is one inspection', async () => {
    const { number, at } = await parcelWithPermit()
    const both = await Promise.all([post(at, START), post(at, START)])
    expect(both.map(({ statusCode }) => statusCode)).toEqual([303, 303])
    await post(at, START)
    expect(await findingsOf(number)).toHaveLength(1)
  })

  test('something not on record is added under its own name, and asked about once more before it goes', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, START)
    const nothing = await post(at, { step: 'more', to: 'add', ...(await versionAt(at)) })
    expect([nothing.statusCode, nothing.body]).toEqual([422, expect.stringContaining('choose what it is')])
    const pit = { step: 'more', to: 'add', newKind: 'seepage-pit', newName: 'pit' }
    const added = await post(at, { ...pit, ...(await versionAt(at)) })
    expect(added.headers.location).toBe(`${at}?step=added-1`)
    expect((await findingsOf(number))[0].record.components[0]).toMatchObject({
      key: null,
      label: 'pit 2',
      kind: 'seepage-pit',
    })
    const there = { step: 'added-1', outcome: 'found', label: 'old pit' }
    await post(at, { ...there, to: 'next', ...(await versionAt(at)) })
    const asks = await post(at, { ...there, to: 'remove', ...(await versionAt(at)) })
    expect(asks.body).toContain('Remove it and everything noted about it?')
    expect((await findingsOf(number))[0].record.components[0].label).toBe('old pit')
    await post(at, { ...there, to: 'remove-sure', ...(await versionAt(at)) })
    expect((await findingsOf(number))[0].record.components).toEqual([])
  })

  test('photos go to their component, and a bad one is refused in words', async () => {
    const { number, at } = await parcelWithPermit()
    const send = async (bytes: Buffer | null) => {
      const data = new FormData()
      data.set('step', 'tank')
      data.set('component', 'tank')
      data.set('photo', new Blob(bytes ? [new Uint8Array(bytes)] : []), bytes ? 'p.jpg' : '')
      const written = new Response(data)
      const headers = {
        ...bearer('firm'),
        accept: 'text/html',
        'content-type': written.headers.get('content-type')!,
      }
      return app.inject({
        method: 'POST',
        url: `${at}/photos`,
        headers,
        payload: Buffer.from(await written.arrayBuffer()),
      })
    }
    expect((await send(await pictureWith())).body).toContain('Save the first step, then add photos.')
    await post(at, START)
    expect((await send(await pictureWith())).headers.location).toBe(`${at}?step=tank#photos-title`)
    expect((await get(`${at}?step=tank`)).body).toMatch(
      /<img src="\/v1\/counties\/quillback\/photos\/[^"]+size=small"/,
    )
    const bad = await send(Buffer.from('text'))
    expect([bad.statusCode, bad.body]).toEqual([
      422,
      expect.stringMatching(/The photo was not kept: it is not a supported image/),
    ])
    expect((await send(null)).body).toContain('Choose a photo first.')
    const [{ id }] = await findingsOf(number)
    expect((await ask('firm', { url: `${api}/findings/${id}/photos` })).body.items).toHaveLength(1)
  })

  test('what it leaves out without saying why is asked for at its own field, and nothing is submitted', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, START)
    const { 'levelAboveOutlet.side': _, ...unread } = TANK
    await post(at, { ...unread, ...(await versionAt(at)) })
    await post(at, { ...PIT, ...(await versionAt(at)) })
    const refused = await post(at, { step: 'review', to: 'next', ...(await versionAt(at)) })
    expect(refused.statusCode).toBe(422)
    expect(refused.body).toContain('was not read for its liquid level: do it, or say why it was left out')
    expect((await findingsOf(number))[0].state).toBe('draft')
    await post(at, { ...unread, leftOutBecause: 'unsafe', ...(await versionAt(at)) })
    await post(at, { step: 'review', to: 'next', ...(await versionAt(at)) })
    expect((await findingsOf(number))[0].state).toBe('submitted')
  })

  test('submitted, it is amended by another', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, START)
    await post(at, { ...TANK, ...(await versionAt(at)) })
    await post(at, { ...PIT, ...(await versionAt(at)) })
    await post(at, { step: 'review', to: 'next', ...(await versionAt(at)) })
    const [submitted] = await findingsOf(number)
    expect((await post(at, { to: 'amend', findings: submitted.id })).headers.location).toBe(at)
    const amendment = (await findingsOf(number)).find(({ state }: { state: string }) => state === 'draft')
    expect([amendment.amends, amendment.record.components.length]).toEqual([submitted.id, 2])
    expect((await get(at)).body).toContain('This is an amendment')
  })

  test('submitted from somewhere else meanwhile: said, what was typed stays, and no second inspection begins', async () => {
    const { number, at } = await parcelWithPermit()
    await post(at, { ...START, leftOutBecause: 'no-time' })
    const version = await versionAt(at)
    await ask('firm', { method: 'POST', url: `${api}/findings/${version.draft}/submission` })
    const late = await post(at, { ...TANK, ...version })
    expect([late.statusCode, late.body]).toEqual([409, expect.stringContaining('was already submitted')])
    expect(late.body).toContain('value="4&#39;-4&quot;"')
    expect(await findingsOf(number)).toHaveLength(1)
  })

  test('findings that a program wrote show as they are, whatever they hold', async () => {
    const { number, at } = await parcelWithPermit()
    const body = {
      ...inspectionThatAgrees,
      components: [
        {
          label: 'box',
          kind: 'distribution-box',
          outcome: 'found',
          liquidDepth: { length: '1 ft', method: 'rigid-rule', instrument: 'rule 2' },
        },
      ],
    }
    await ask('firm', { method: 'POST', url: `${api}/parcels/${number}/findings`, body })
    const page = (await get(`${at}?step=added-1`)).body
    expect(page).toMatch(/Also noted.*Liquid depth/s)
    expect(page).toContain('name="liquidDepth.by" value="rule 2"')
  })
})

describe('who, and what else', () => {
  test('only a firm of the county; another firm sees nothing of it', async () => {
    const { at } = await parcelWithPermit()
    await post(at, START)
    for (const who of ['reviewer', 'agent', 'stranger'] as const)
      expect((await get(at, who)).statusCode).toBe(404)
    expect((await get(`${at}/file.json`, 'agent')).statusCode).toBe(404)
    expect((await get(`${at}/file.json`, 'rival')).json().draft).toBeNull()
    expect((await get(`${at}/file.json`)).json().draft.revision).toBe(1)
    expect((await post(at, START, 'reviewer')).statusCode).toBe(403)
  })

  test('what another firm submitted does not travel to the phone, nor show on the page', async () => {
    const { number, at } = await parcelWithPermit()
    const body = { ...inspectionThatAgrees, inspectedOn: '2026-10-11', notes: 'seen by a rival' }
    const { body: draft } = await ask('rival', {
      method: 'POST',
      url: `${api}/parcels/${number}/findings`,
      body,
    })
    await ask('rival', { method: 'POST', url: `${api}/findings/${draft.id}/submission` })
    const file = (await get(`${at}/file.json`)).body
    expect(JSON.parse(file).given).not.toHaveProperty('findings')
    for (const text of [file, (await get(at)).body, (await get(`${at}?step=tank`)).body]) {
      expect(text).not.toContain('seen by a rival')
      expect(text).not.toContain(draft.id)
    }
    expect((await get(`${at}/file.json`, 'rival')).json().given).not.toHaveProperty('findings')
  })

  test('an old spelling leads to the one address of the parcel', async () => {
    const { number, at } = await parcelWithPermit()
    const spelled = await get(
      `/counties/quillback/parcels/${number.replaceAll('-', '')}/inspection?step=tank`,
    )
    expect([spelled.statusCode, spelled.headers.location]).toEqual([303, `${at}?step=tank`])
  })

  test('anything at all can be posted, and is never a fault of the service', async () => {
    const { at } = await parcelWithPermit()
    const odd: Record<string, string>[] = [
      {},
      { step: '__proto__', to: 'constructor' },
      { step: 'tank', outcome: 'found', kind: 'constructor', 'tie.a': '__proto__', 'length.how': 'toString' },
      { ...TANK, shape: 'pyramid', 'levelAboveOutlet.side': 'sideways' },
      { step: 'tank', outcome: 'x'.repeat(20_000) },
      { step: 'start', inspectedOn: '2026-10-12', 'reference.bearingDeg': 'NaN', people: '1e400' },
      { to: 'settle', 'keep:': 'mine', draft: 'x', revision: '-1' },
      { to: 'amend' },
      { step: 'added-9', to: 'remove-sure' },
    ]
    for (const fields of odd)
      expect((await post(at, fields)).statusCode, JSON.stringify(fields).slice(0, 80)).toBeLessThan(500)
    expect((await get(`${at}?step=%F0%9F%95%B3`)).statusCode).toBe(200)
  })

  test('the file, the rules and the modules are small, kept by their content, and private where they should be', async () => {
    const { at } = await parcelWithPermit()
    const file = await get(`${at}/file.json`, 'firm', { 'accept-encoding': 'br' })
    expect([file.headers['content-encoding'], file.headers['cache-control']]).toEqual([
      'br',
      'private, no-cache',
    ])
    const { rules } = (await get(`${at}/file.json`)).json()
    const given = await get(rules, 'firm', { 'accept-encoding': 'br' })
    expect([given.statusCode, given.headers['cache-control']]).toEqual([
      200,
      'private, max-age=31536000, immutable',
    ])
    expect(given.rawPayload.length).toBeLessThan(8_000)
    expect((await get(rules.replace(/.\.json/, 'x.json'))).statusCode).toBe(404)
    const page = (await get(at)).body
    const module = /src="(\/assets\/inspection\/main\.[A-Z0-9]+\.js)"/.exec(page)?.[1]
    const script = await app.inject({ url: module!, headers: { 'accept-encoding': 'gzip' } })
    expect([script.statusCode, script.headers['content-encoding'], script.headers['cache-control']]).toEqual([
      200,
      'gzip',
      'public, max-age=31536000, immutable',
    ])
    const worker = await app.inject({ url: '/inspection-worker.js' })
    expect([worker.statusCode, worker.headers['cache-control']]).toEqual([200, 'no-cache'])
    expect((await app.inject({ url: '/assets/inspection/nothing.js' })).statusCode).toBe(404)
  })
})
