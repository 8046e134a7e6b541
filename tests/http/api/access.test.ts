import type { InjectOptions } from 'fastify'
import { describe, expect, test } from 'vitest'
import { findingsExample, permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { inspectionThatDiffers, newParcel } from '../../support/quillback.ts'

const { services, ask } = await testApp()
const parcel = await newParcel(services, '07-0412-0031')
const here = '/v1/counties/quillback'
const at = `${here}/parcels/${parcel.number}`

const post = (who: keyof People, url: string, body?: object, headers: Record<string, string> = {}) =>
  ask(who, { method: 'POST', url, headers, ...(body ? { body } : {}) })

const permit = (await post('reviewer', `${at}/permits`, permitExample)).body.permit
const draft = (await post('firm', `${at}/findings`, inspectionThatDiffers)).body
const submitted = (await post('firm', `${at}/findings`, inspectionThatDiffers)).body
const consequence = (await post('firm', `${here}/findings/${submitted.id}/submission`)).body.consequence
const discrepancy: string = consequence.changes[0].discrepancy
const reconciliation: string = consequence.reconciliation

type Expected = { readonly [W in keyof People | 'nobody']: number }
const everybody = (status: number): Expected => ({
  reviewer: status,
  firm: status,
  rival: status,
  agent: status,
  stranger: 404,
  nobody: 401,
})
/** A read that a role may not make is answered as if there were nothing; a write as not allowed. */
const read = (over: Partial<Expected>): Expected => ({ ...everybody(404), ...over })
const write = (over: Partial<Expected>): Expected => ({ ...everybody(403), ...over })

const ifMatch = { 'if-match': '"r99"' }
const routes: readonly (readonly [string, InjectOptions, Expected])[] = [
  ['the counties', { url: '/v1/counties' }, { ...everybody(200), stranger: 200 }],
  ['a county', { url: here }, everybody(200)],
  ['the parcels', { url: `${here}/parcels` }, everybody(200)],
  ['a parcel', { url: at }, everybody(200)],
  ['its status', { url: `${at}/status` }, everybody(200)],
  ['its as-built', { url: `${at}/as-built` }, read({ reviewer: 200, firm: 200, rival: 200 })],
  ['its findings', { url: `${at}/findings` }, read({ reviewer: 200, firm: 200, rival: 200 })],
  ['its newest reconciliation', { url: `${at}/reconciliation` }, read({ reviewer: 200, firm: 200 })],
  ['its reconciliations', { url: `${at}/reconciliations` }, read({ reviewer: 200, firm: 200, rival: 200 })],
  ['a permit', { url: `${here}/permits/${permit.id}` }, read({ reviewer: 200, firm: 200, rival: 200 })],
  ['a draft', { url: `${here}/findings/${draft.id}` }, read({ firm: 200 })],
  ['findings', { url: `${here}/findings/${submitted.id}` }, read({ reviewer: 200, firm: 200 })],
  [
    'a reconciliation',
    { url: `${here}/reconciliations/${reconciliation}` },
    read({ reviewer: 200, firm: 200 }),
  ],
  ['a replay', { url: `${here}/reconciliations/${reconciliation}/replay` }, read({ reviewer: 200 })],
  ['the queue', { url: `${here}/discrepancies` }, read({ reviewer: 200, firm: 200, rival: 200 })],
  ['a discrepancy', { url: `${here}/discrepancies/${discrepancy}` }, read({ reviewer: 200, firm: 200 })],
  ['the rule packs', { url: '/v1/rules' }, { ...read({ reviewer: 200 }), stranger: 200 }],
  ['a rule pack', { url: '/v1/rules/quillback/code' }, { ...read({ reviewer: 200 }), stranger: 200 }],
  [
    'a trial',
    {
      method: 'POST',
      url: '/v1/reconciliations/trial',
      body: { rules: 'quillback', findings: findingsExample },
    },
    { ...everybody(200), stranger: 200 },
  ],
  [
    'entering a permit',
    { method: 'POST', url: `${at}/permits`, body: permitExample },
    write({ reviewer: 409 }),
  ],
  [
    'correcting a permit',
    {
      method: 'PUT',
      url: `${here}/permits/${permit.id}`,
      headers: ifMatch,
      body: { record: permitExample, reason: 'Read again.' },
    },
    write({ reviewer: 412 }),
  ],
  [
    'beginning findings',
    { method: 'POST', url: `${at}/findings`, body: findingsExample },
    write({ firm: 201, rival: 201 }),
  ],
  [
    'changing a draft',
    { method: 'PUT', url: `${here}/findings/${draft.id}`, headers: ifMatch, body: findingsExample },
    write({ firm: 412, rival: 404 }),
  ],
  [
    'handing a draft in',
    { method: 'POST', url: `${here}/findings/${draft.id}/submission`, headers: ifMatch },
    write({ firm: 412, rival: 404 }),
  ],
  [
    'amending findings',
    { method: 'POST', url: `${here}/findings/${submitted.id}/amendment`, body: findingsExample },
    write({ firm: 201, rival: 404 }),
  ],
  [
    'deciding',
    {
      method: 'POST',
      url: `${here}/discrepancies/${discrepancy}/decisions`,
      headers: ifMatch,
      body: { action: 'accept', reason: 'Seen.' },
    },
    write({ reviewer: 412 }),
  ],
]

describe.each(routes)('%s', (_, request, expected) => {
  test.each(Object.entries(expected) as [keyof Expected, number][])('as %s: %i', async (who, status) => {
    expect((await ask(who, request)).status).toBe(status)
  })
})

describe('what an agent sees of a parcel', () => {
  test('is its status and nothing of the file', async () => {
    const { body } = await ask('agent', { url: at })
    expect(Object.keys(body).sort()).toEqual(['address', 'id', 'number', 'oldNumbers', 'retiredOn', 'status'])
  })

  test('names no firm, no account, no permit and no reading', async () => {
    const { body } = await ask('agent', { url: `${at}/status` })
    const text = JSON.stringify(body)
    for (const secret of ['Heron', permit.id, submitted.id, submitted.firm.id, '718', '74-118', "6'-0"]) {
      expect(text).not.toContain(secret)
    }
  })
})

describe('what a firm sees', () => {
  test('is its own findings and what they raised', async () => {
    const own = (await ask('firm', { url: at })).body
    expect(own.findings.length).toBeGreaterThan(0)
    expect(own.discrepancies.length).toBeGreaterThan(0)
    expect(own.documents).toBeUndefined()
  })

  test('is nothing of another firm’s, though the file is the same', async () => {
    const { body } = await ask('rival', { url: at })
    expect([body.discrepancies, body.permits.length, body.asBuilt.components.length]).toEqual([[], 1, 3])
    expect(JSON.stringify(body)).not.toContain(submitted.id)
    const queue = (await ask('rival', { url: `${here}/discrepancies` })).body
    expect([queue.items, queue.counts]).toEqual([[], { action: 0, review: 0, note: 0 }])
    expect((await ask('rival', { url: `${at}/reconciliations` })).body.items).toEqual([])
  })

  test('has a correction in it that another firm’s findings led to', async () => {
    const tank = (await ask('firm', { url: `${here}/discrepancies?kind=capacity-below-record` })).body
      .items[0]
    const decided = await post(
      'reviewer',
      `${here}/discrepancies/${tank.id}/decisions`,
      {
        action: 'correct-record',
        reason: 'The card reads 720.',
        correction: {
          permit: permit.id,
          component: `${permit.id}/tank`,
          field: 'capacity',
          value: '720 gal',
        },
      },
      { 'if-match': `"r${tank.revision}"` },
    )
    expect([decided.status, decided.body.discrepancy.state]).toEqual([201, 'vanished'])
    const { asBuilt } = (await ask('rival', { url: `${at}/as-built` })).body
    expect(asBuilt.components[0].measures.capacity.value).toEqual({ gal: 720, asWritten: '720 gal' })
  })
})

test('a county outside the token is not there, whatever is asked of it', async () => {
  expect((await ask('reviewer', { url: '/v1/counties/elsewhere/parcels' })).status).toBe(404)
  expect((await ask('stranger', { url: `${here}/permits/${permit.id}` })).status).toBe(404)
})
