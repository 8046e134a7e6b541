import { describe, expect, test } from 'vitest'
import { permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import {
  inspectionThatAgrees,
  inspectionThatDiffers,
  newParcel,
  permit1974,
} from '../../support/quillback.ts'

const { services, ask } = await testApp()
const here = '/v1/counties/quillback'

const post = (who: keyof People, url: string, body?: object, headers: Record<string, string> = {}) =>
  ask(who, { method: 'POST', url, headers, ...(body ? { body } : {}) })
const pointers = (body: { errors: { in: string; pointer: string }[] }) =>
  body.errors.map(({ in: part, pointer }) => `${part} ${pointer}`)

/** A parcel with a permit, and an inspection that differs submitted. */
async function compared() {
  const { number } = await newParcel(services)
  const at = `${here}/parcels/${number}`
  const { permit } = (await post('reviewer', `${at}/permits`, permit1974)).body
  const draft = (await post('firm', `${at}/findings`, inspectionThatDiffers)).body
  const { consequence } = (await post('firm', `${here}/findings/${draft.id}/submission`)).body
  return { at, number, permit, draft, consequence }
}

describe('bad input', () => {
  test('is told whole: every fault of path, query and body, each with its pointer', async () => {
    const { status, body } = await post('reviewer', `${here}/parcels/07-0412-0031/permits`, {
      kind: 'old',
      approvedOn: '13/45/74',
      components: [
        { tag: 'tank', kind: 'tank', capacity: '1O00', length: '4-6' },
        { tag: 'tank', kind: 'vat' },
      ],
      color: 'green',
    })
    expect([status, body.type]).toEqual([422, '/problems/invalid-input'])
    expect(pointers(body).sort()).toEqual([
      'body /approvedOn',
      'body /color',
      'body /components/0/capacity',
      'body /components/0/length',
      'body /components/1/kind',
      'body /components/1/tag',
      'body /kind',
      'body /number',
    ])
  })

  test.each([
    ['a day that is still to come', { ...permitExample, approvedOn: '2999-01-01' }, 'body /approvedOn'],
    ['half of a character', { ...permitExample, remarks: 'wet \ud800' }, 'body /remarks'],
    ['a number of half a character', { ...permitExample, number: '74\udfff' }, 'body /number'],
    ['an approval before the issue', { ...permitExample, approvedOn: '1973-01-01' }, 'body /approvedOn'],
  ])('%s', async (_, entry, pointer) => {
    const { number } = await newParcel(services)
    const { status, body } = await post('reviewer', `${here}/parcels/${number}/permits`, entry)
    expect(status).toBe(422)
    expect(pointers(body)).toEqual([pointer])
  })

  test('in an address is bad input or nothing, never a fault of the service', async () => {
    for (const asked of ['%00', 'x%EF%BF%BF', "'--", '%F0%9F%9A%BD', '../..', 'A'.repeat(200)]) {
      expect([404, 422]).toContain((await ask('reviewer', { url: `${here}/parcels/${asked}/status` })).status)
    }
    for (const q of ['%00', '%25', "'", '%F0%9F%9A%BD', '_', '\\']) {
      expect([200, 422]).toContain((await ask('reviewer', { url: `${here}/parcels?q=${q}` })).status)
    }
    expect((await ask('reviewer', { url: `${here}/permits/not-an-id` })).status).toBe(422)
    expect((await ask('reviewer', { url: `${here}/discrepancies?state=lost&since=yesterday` })).status).toBe(
      422,
    )
  })

  test('a trial beyond what a system can be is refused before it is worked on', async () => {
    const tanks = Array.from({ length: 61 }, (_, index) => ({ tag: `tank ${index}`, kind: 'tank' }))
    const body = { rules: 'quillback', permits: [{ ...permitExample, components: tanks }] }
    const refused = await post('agent', '/v1/reconciliations/trial', body)
    expect([refused.status, pointers(refused.body)]).toEqual([422, ['body /permits']])
  })

  test('decisions want what goes with them, and only that', async () => {
    const { consequence } = await compared()
    const url = `${here}/discrepancies/${consequence.changes[0].discrepancy}/decisions`
    const version = { 'if-match': '*' }
    const of = async (body: object) => pointers((await post('reviewer', url, body, version)).body)
    expect(await of({})).toEqual(['body /action', 'body /reason'])
    expect(await of({ action: 'correct-record', reason: ' ' })).toEqual(['body /reason', 'body /correction'])
    expect(await of({ action: 'accept', reason: 'Seen.', asks: 'dig' })).toEqual(['body /asks'])
  })
})

describe('the same request twice', () => {
  test('with a key makes one permit, and the answer is the first, word for word', async () => {
    const { number } = await newParcel(services)
    const url = `${here}/parcels/${number}/permits`
    const key = { 'idempotency-key': `permit-${number}` }
    const first = await post('reviewer', url, permitExample, key)
    const again = await post('reviewer', url, permitExample, key)
    expect([first.status, again.status]).toEqual([201, 201])
    expect(again.body).toEqual(first.body)
    expect([again.headers.etag, again.headers.location]).toEqual([first.headers.etag, first.headers.location])
    expect((await post('reviewer', url, { ...permitExample, bedrooms: 4 }, key)).status).toBe(422)
    expect((await ask('reviewer', { url: `${here}/parcels/${number}` })).body.permits).toHaveLength(1)
  })

  test('with a key hands findings in once', async () => {
    const { number } = await newParcel(services)
    const draft = (await post('firm', `${here}/parcels/${number}/findings`, inspectionThatAgrees)).body
    const url = `${here}/findings/${draft.id}/submission`
    const key = { 'idempotency-key': `hand-in-${draft.id}` }
    const first = await post('firm', url, undefined, key)
    const again = await post('firm', url, undefined, key)
    expect([first.status, again.status, again.headers['idempotency-replayed']]).toEqual([200, 200, 'true'])
    expect(again.body).toEqual(first.body)
    expect((await post('firm', url)).status).toBe(409)
  })
})

describe('versions', () => {
  test('a stale correction is refused, and one without If-Match is told to have one', async () => {
    const { permit } = await compared()
    const put = (headers: Record<string, string>) =>
      ask('reviewer', {
        method: 'PUT',
        url: `${here}/permits/${permit.id}`,
        headers,
        body: { record: { ...permit1974, bedrooms: 4 }, reason: 'The 3 is a 4.' },
      })
    expect((await put({})).status).toBe(428)
    const done = await put({ 'if-match': '"r1"' })
    expect([done.status, done.headers.etag, done.body.permit.record.bedrooms]).toEqual([200, '"r2"', 4])
    expect((await put({ 'if-match': '"r1"' })).status).toBe(412)
    const { body } = await ask('reviewer', { url: `${here}/permits/${permit.id}` })
    expect(body.revisions.map((it: { reason: string | null }) => it.reason)).toEqual([null, 'The 3 is a 4.'])
  })

  test('what a read gives as entry can be changed in one place and sent back', async () => {
    const { permit } = await compared()
    const { body, headers } = await ask('reviewer', { url: `${here}/permits/${permit.id}` })
    const put = await ask('reviewer', {
      method: 'PUT',
      url: `${here}/permits/${permit.id}`,
      headers: { 'if-match': String(headers.etag) },
      body: { record: { ...body.permit.entry, remarks: 'wet in spring' }, reason: 'On the back.' },
    })
    expect(put.status).toBe(200)
    expect(put.body.permit.record).toEqual({ ...body.permit.record, remarks: 'wet in spring' })
    const sources = put.body.permit.sources
    expect(sources['/components/0/capacity']).toEqual(body.permit.sources[''])
    const inspection = (
      await post('firm', `${here}/parcels/${permit.parcel}/findings`, inspectionThatDiffers)
    ).body
    const changed = await ask('firm', {
      method: 'PUT',
      url: `${here}/findings/${inspection.id}`,
      headers: { 'if-match': '"r1"' },
      body: { ...inspection.entry, notes: 'dog in the yard' },
    })
    expect(changed.body.record).toEqual({ ...inspection.record, notes: 'dog in the yard' })
  })

  test('two reviewers who decide at once: one decides, the other is told', async () => {
    const { consequence } = await compared()
    const id = consequence.changes[0].discrepancy
    const { etag } = (await ask('reviewer', { url: `${here}/discrepancies/${id}` })).headers
    const decide = (reason: string) =>
      post(
        'reviewer',
        `${here}/discrepancies/${id}/decisions`,
        { action: 'accept', reason },
        { 'if-match': String(etag) },
      )
    const answers = await Promise.all([decide('One.'), decide('Other.')])
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 412])
    expect((await ask('reviewer', { url: `${here}/discrepancies/${id}` })).body.decisions).toHaveLength(1)
  })

  test('a read that nothing has changed is 304', async () => {
    const { at } = await compared()
    const { headers } = await ask('reviewer', { url: at })
    const again = await ask('reviewer', { url: at, headers: { 'if-none-match': String(headers.etag) } })
    expect(again.status).toBe(304)
  })
})

describe('lists', () => {
  test('the queue comes in pages, worst first, each discrepancy once, and counts on the first', async () => {
    const { number } = await compared()
    const whole = (await ask('reviewer', { url: `${here}/discrepancies?parcel=${number}&limit=500` })).body
    expect(whole.items.length).toBeGreaterThan(2)
    const { action, review, note } = whole.counts
    expect(action + review + note).toBe(whole.items.length)
    const seen: string[] = []
    let url: string | null = `${here}/discrepancies?parcel=${number}&limit=2`
    for (let page = 1; url; page++) {
      const { body, headers } = await ask('reviewer', { url })
      expect(body.counts === null).toBe(page > 1)
      if (body.next) expect(headers.link).toBe(`<${body.next}>; rel="next"`)
      seen.push(...body.items.map((it: { id: string }) => it.id))
      url = body.next
    }
    expect(seen).toEqual(whole.items.map((it: { id: string }) => it.id))
    const ranks = whole.items.map((it: { severity: string }) =>
      ['action', 'review', 'note'].indexOf(it.severity),
    )
    expect(ranks).toEqual([...ranks].sort())
  })

  test('filters narrow the queue', async () => {
    const { number, consequence } = await compared()
    const of = async (query: string) =>
      (await ask('reviewer', { url: `${here}/discrepancies?parcel=${number}&${query}` })).body.items
    const kinds = (await of('kind=capacity-below-record&kind=line-replaced-without-permit')).map(
      (it: { kind: string }) => it.kind,
    )
    expect(kinds.sort()).toEqual(['capacity-below-record', 'line-replaced-without-permit'])
    expect(await of('since=2999-01-01')).toEqual([])
    expect((await of('since=2020-01-01T00:00:00%2B02:00')).length).toBe(
      consequence.changes.filter(({ state }: { state: string }) => state === 'open').length,
    )
    expect(await of('state=decided')).toEqual([])
    expect(await of('severity=action')).toEqual([])
  })

  test('parcels come by number, and a cursor made up is bad input', async () => {
    const first = (await ask('agent', { url: `${here}/parcels?limit=2` })).body
    const second = (await ask('agent', { url: first.next })).body
    expect(second.items[0].number > first.items[1].number).toBe(true)
    const made = await ask('agent', {
      url: `${here}/parcels?cursor=${Buffer.from('{}').toString('base64url')}`,
    })
    expect([made.status, made.body.errors[0].pointer]).toEqual([422, '/cursor'])
  })

  test('reconciliations come newest first, in pages', async () => {
    const { at } = await compared()
    const whole = (await ask('reviewer', { url: `${at}/reconciliations` })).body.items
    expect(whole.map((it: { occasion: string }) => it.occasion)).toEqual([
      'findings-submitted',
      'permit-entered',
    ])
    const first = (await ask('reviewer', { url: `${at}/reconciliations?limit=1` })).body
    expect((await ask('reviewer', { url: first.next })).body.items).toEqual([whole[1]])
  })
})
