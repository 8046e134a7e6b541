import { describe, expect, test } from 'vitest'
import { findingsExample, permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import {
  inspectionThatAgrees,
  inspectionThatDiffers,
  newParcel,
  repair1996,
  standingClock,
} from '../../support/quillback.ts'

const { clock, set } = standingClock('2026-11-02T15:00:00Z')
const { services, ask } = await testApp({ clock })
const parcel = await newParcel(services, '07-0412-0031')
const here = '/v1/counties/quillback'
const at = `${here}/parcels/07-0412-0031`

type Told = { change: string; kind: string; about: string; discrepancy: string; state: string }
const told = (changes: readonly Told[]) =>
  changes.map(({ change, kind, about }) => `${change} ${kind} (${about})`)
const idOf = (changes: readonly Told[], kind: string): string =>
  changes.find((it) => it.kind === kind)!.discrepancy

const status = async () => (await ask('agent', { url: `${at}/status` })).body.status

describe('the main job, through HTTP', () => {
  let draft: { id: string }
  let raised: Told[]

  test('a parcel nobody knows anything of has no record', async () => {
    expect((await ask('reviewer', { url: `${here}/parcels?q=7 412 31` })).body.items).toMatchObject([
      { id: parcel.id, number: '07-0412-0031', match: { by: 'number' } },
    ])
    expect((await status()).word).toBe('no-record')
  })

  test('a permit comes in, and the as-built is there with where each value comes from', async () => {
    const entered = await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: permitExample })
    expect([entered.status, entered.headers.etag]).toEqual([201, '"r1"'])
    const { permit } = entered.body
    expect(entered.headers.location).toBe(`${here}/permits/${permit.id}`)
    expect(permit.record.issuedOn).toBe('1974-05-03')
    expect(permit.record.reference.baseline).toEqual({ ft: 36, asWritten: '36 ft' })
    const { asBuilt } = (await ask('firm', { url: `${at}/as-built` })).body
    expect(asBuilt.components[0].measures.capacity).toMatchObject({
      state: 'stated',
      value: { gal: 1000, asWritten: '1,000 gal' },
      origin: { pointer: '/components/0/capacity', source: { kind: 'typed' } },
    })
    const before = (await ask('firm', { url: `${at}/as-built?on=1974-06-19` })).body.asBuilt
    expect([before.components, before.unapproved.length]).toEqual([[], 1])
    expect((await status()).word).toBe('not-inspected')
  })

  test('findings come in, and differences come out', async () => {
    const drafted = await ask('firm', { method: 'POST', url: `${at}/findings`, body: inspectionThatAgrees })
    expect([drafted.status, drafted.body.state, drafted.headers.etag]).toEqual([201, 'draft', '"r1"'])
    draft = drafted.body
    const changed = await ask('firm', {
      method: 'PUT',
      url: `${here}/findings/${draft.id}`,
      headers: { 'if-match': '"r1"' },
      body: inspectionThatDiffers,
    })
    expect([changed.status, changed.headers.etag]).toEqual([200, '"r2"'])
    expect((await status()).word).toBe('not-inspected')
    const { status: code, body } = await ask('firm', {
      method: 'POST',
      url: `${here}/findings/${draft.id}/submission`,
      headers: { 'if-match': '"r2"' },
    })
    expect([code, body.findings.state, body.consequence.status.word]).toEqual([
      200,
      'submitted',
      'under-review',
    ])
    raised = body.consequence.changes
    expect(told(raised)).toEqual(
      expect.arrayContaining([
        'appeared capacity-below-record (tank)',
        'appeared line-replaced-without-permit (line)',
      ]),
    )
  })

  test('the reconciliation explains itself', async () => {
    const { body } = await ask('firm', { url: `${at}/reconciliation` })
    const tank = body.result.discrepancies.find((it: { kind: string }) => it.kind === 'capacity-below-record')
    const outcome = body.result.outcomes[tank.outcome]
    expect(outcome.because).toMatch(/718/)
    expect(outcome.reason).toMatchObject({
      is: 'capacity-record',
      comes: 'smaller',
      recorded: { value: 1000, unit: 'gal' },
    })
    expect(outcome.exhibits.map((at: number) => body.result.exhibits[at].word)).toEqual(
      expect.arrayContaining(['stated', 'found', 'derived']),
    )
    expect(outcome.steps.length).toBeGreaterThan(2)
    expect(outcome.citations.map((at: number) => body.result.citations[at].authority).length).toBeGreaterThan(
      0,
    )
    const replayed = await ask('reviewer', { url: `${here}/reconciliations/${body.id}/replay` })
    expect(replayed.body).toMatchObject({ same: true, missing: [], resultHashThen: body.resultHash })
  })

  test('the queue has it, and a reviewer decides', async () => {
    const { body: queue } = await ask('reviewer', { url: `${here}/discrepancies?severity=review` })
    expect(queue.counts.review).toBe(queue.items.length)
    expect(queue.items.map((it: { kind: string }) => it.kind)).toContain('line-replaced-without-permit')
    const line = idOf(raised, 'line-replaced-without-permit')
    const read = await ask('reviewer', { url: `${here}/discrepancies/${line}` })
    const decided = await ask('reviewer', {
      method: 'POST',
      url: `${here}/discrepancies/${line}/decisions`,
      headers: { 'if-match': String(read.headers.etag) },
      body: { action: 'require-permit', reason: 'Work without paper.' },
    })
    expect([decided.status, decided.body.discrepancy.state, decided.body.status.word]).toEqual([
      201,
      'decided',
      'action-needed',
    ])
    expect((await status()).items[0].state).toBe('owner-must-act')
  })

  test('a late permit says what appeared and what vanished, and the decision stays', async () => {
    set('2026-11-03T15:00:00Z')
    const { body } = await ask('reviewer', { method: 'POST', url: `${at}/permits`, body: repair1996 })
    expect(told(body.consequence.changes)).toEqual(
      expect.arrayContaining([
        'appeared line-replaced (line)',
        'vanished line-replaced-without-permit (line)',
      ]),
    )
    const line = idOf(raised, 'line-replaced-without-permit')
    const read = (await ask('reviewer', { url: `${here}/discrepancies/${line}` })).body
    expect([read.state, read.decisions.length]).toEqual(['vanished', 1])
    expect(read.changes.map((it: Told) => it.change)).toEqual(['appeared', 'vanished'])
  })

  test('amended findings run it again, and an accepted difference is resolved', async () => {
    set('2026-11-04T15:00:00Z')
    const amendment = await ask('firm', {
      method: 'POST',
      url: `${here}/findings/${draft.id}/amendment`,
      body: { ...inspectionThatDiffers, components: inspectionThatAgrees.components },
    })
    expect([amendment.status, amendment.body.amends]).toEqual([201, draft.id])
    const { body } = await ask('firm', {
      method: 'POST',
      url: `${here}/findings/${amendment.body.id}/submission`,
    })
    expect(told(body.consequence.changes)).toContain('vanished capacity-below-record (tank)')
    expect((await ask('firm', { url: `${here}/findings/${draft.id}` })).body.amendedBy).toBe(
      amendment.body.id,
    )
    const list = (await ask('reviewer', { url: `${at}/reconciliations` })).body.items
    expect(list.map((it: { occasion: string }) => it.occasion)).toEqual([
      'findings-amended',
      'permit-entered',
      'findings-submitted',
      'permit-entered',
    ])
  })

  test('the same work without storing anything', async () => {
    const { status: code, body } = await ask('agent', {
      method: 'POST',
      url: '/v1/reconciliations/trial',
      body: { rules: 'quillback', permits: [permitExample], findings: findingsExample },
    })
    expect(code).toBe(200)
    expect(body.discrepancies.map((it: { kind: string }) => it.kind)).toContain(
      'line-replaced-without-permit',
    )
  })
})
