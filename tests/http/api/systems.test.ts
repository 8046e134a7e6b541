import { describe, expect, test } from 'vitest'
import { testApp } from '../../support/app.ts'
import { inspectionThatAgrees, newParcel, permit1974, standingClock } from '../../support/quillback.ts'

const { clock } = standingClock('2026-11-02T15:00:00Z')
const { services, ask } = await testApp({ clock })
const here = '/v1/counties/quillback'

type Answer = Awaited<ReturnType<typeof ask>>
const post = (who: 'reviewer' | 'firm' | 'agent', url: string, body: unknown): Promise<Answer> =>
  ask(who, { method: 'POST', url, body: body as object })
const put = (url: string, version: number, body: unknown): Promise<Answer> =>
  ask('reviewer', { method: 'PUT', url, headers: { 'if-match': `"r${version}"` }, body: body as object })
const statusOf = async (number: string) =>
  (await ask('agent', { url: `${here}/parcels/${number}/status` })).body.status
const inspected = async (number: string, system: string, entry: unknown) => {
  const draft = await post('firm', `${here}/parcels/${number}/findings?system=${system}`, entry)
  expect(draft.status).toBe(201)
  const sent = await post('firm', `${here}/findings/${draft.body.id}/submission`, {})
  expect(sent.status, JSON.stringify(sent.body)).toBe(200)
  return sent.body
}
/** What it left out is waived, so that all that was looked at matches. */
const complete = { ...inspectionThatAgrees, leftOutBecause: 'no-time' }

describe('a parcel of which nothing was said', () => {
  test('has one system, made by itself, that bears its id and is in no answer’s way', async () => {
    const parcel = await newParcel(services)
    const { items } = (await ask('firm', { url: `${here}/parcels/${parcel.number}/systems` })).body
    expect(items).toEqual([
      {
        id: parcel.id,
        parcel: parcel.id,
        name: 'main system',
        use: 'main',
        label: null,
        shared: false,
        parcels: [
          {
            parcel: parcel.id,
            number: parcel.number,
            serves: true,
            liesOn: true,
            bedrooms: null,
            designFlowGpd: null,
          },
        ],
        revision: 0,
      },
    ])
    const permit = await post('reviewer', `${here}/parcels/${parcel.number}/permits`, permit1974)
    expect(permit.body.permit.system).toBe(parcel.id)
    const { body } = await ask('reviewer', { url: `${here}/parcels/${parcel.number}/reconciliation` })
    expect(body.system).toBe(parcel.id)
    expect(body.inputs.system).toBeUndefined()
    expect((await statusOf(parcel.number)).systems).toEqual([])
  })
})

describe('a cottage with a system of its own', () => {
  let number: string
  let main: string
  let cottage: string

  test('is said by a reviewer, with a reason that is kept', async () => {
    const parcel = await newParcel(services)
    number = parcel.number
    main = parcel.id
    await post('reviewer', `${here}/parcels/${number}/permits`, permit1974)
    const entry = {
      use: 'cottage',
      label: 'guest cottage, pins 4411',
      parcels: [{ parcel: number }],
      reason: 'The owner showed it.',
    }
    expect((await post('firm', `${here}/parcels/${number}/systems`, entry)).status).toBe(403)
    const said = await post('reviewer', `${here}/parcels/${number}/systems`, entry)
    expect([said.status, said.headers.etag]).toEqual([201, '"r1"'])
    cottage = said.body.system.id
    const read = await ask('reviewer', { url: `${here}/systems/${cottage}` })
    expect(read.body.history).toMatchObject([{ revision: 1, reason: 'The owner showed it.', use: 'cottage' }])
    expect((await ask('firm', { url: `${here}/systems/${cottage}` })).body.history).toEqual([])
    expect((await ask('agent', { url: `${here}/systems/${cottage}` })).status).toBe(404)
  })

  test('a permit, an inspection and an as-built then say which one they mean', async () => {
    const second = { ...permit1974, number: '74-119' }
    const refused = await post('reviewer', `${here}/parcels/${number}/permits`, second)
    expect(refused.status).toBe(422)
    expect(refused.body.errors[0]).toMatchObject({ pointer: '/system' })
    expect(refused.body.errors[0].message).toContain(`(guest cottage, pins 4411, ${cottage})`)
    expect((await post('firm', `${here}/parcels/${number}/findings`, complete)).status).toBe(422)
    expect((await ask('firm', { url: `${here}/parcels/${number}/as-built` })).status).toBe(422)
    const elsewhere = (await newParcel(services)).id
    const stray = await post('reviewer', `${here}/parcels/${number}/permits?system=${elsewhere}`, second)
    expect(stray.body.errors[0].message).toContain('is no system of parcel')
    const entered = await post('reviewer', `${here}/parcels/${number}/permits?system=${cottage}`, second)
    expect(entered.body.permit).toMatchObject({ system: cottage, parcel: main })
    for (const [system, permit] of [
      [main, '74-118'],
      [cottage, '74-119'],
    ]) {
      const { asBuilt } = (await ask('firm', { url: `${here}/parcels/${number}/as-built?system=${system}` }))
        .body
      expect(asBuilt.permits.map((it: { number: string }) => it.number)).toEqual([permit])
    }
  })

  test('that nobody inspected keeps the parcel from matching, and an agent reads which, and no label', async () => {
    await inspected(number, main, complete)
    const now = await statusOf(number)
    expect(now.systems).toMatchObject([
      { name: 'main system', word: 'matches', notes: [] },
      { name: 'cottage', word: 'not-inspected', notes: ['The system of the cottage was not inspected.'] },
    ])
    expect(now.word).toBe('not-inspected')
    expect(now.sentence).toContain('more than one septic system')
    expect(JSON.stringify(now)).not.toContain('4411')
    const spanish = await ask('agent', {
      url: `${here}/parcels/${number}`,
      headers: { 'accept-language': 'es' },
    })
    expect(JSON.stringify(spanish.body)).not.toContain('4411')
  })

  test('a permit entered under the wrong one is corrected to the other, with a reason', async () => {
    const { permits } = (await ask('reviewer', { url: `${here}/parcels/${number}?system=${cottage}` })).body
    const [permit] = permits
    const moved = await put(`${here}/permits/${permit.id}`, 1, {
      record: permit.entry,
      reason: 'It is of the main house.',
      system: main,
    })
    expect([moved.status, moved.body.permit.system]).toEqual([200, main])
    const { permits: left } = (await ask('reviewer', { url: `${here}/parcels/${number}?system=${cottage}` }))
      .body
    expect(left).toEqual([])
    const back = await put(`${here}/permits/${permit.id}`, 2, {
      record: permit.entry,
      reason: 'It is of the cottage after all.',
      system: cottage,
    })
    expect(back.body.permit.system).toBe(cottage)
  })

  test('one that has papers or inspections is not said away; a stale form and unknown parcels are refused', async () => {
    const gone = { use: 'cottage', parcels: [], reason: 'There is none.' }
    const kept = await put(`${here}/systems/${cottage}`, 1, gone)
    expect([kept.status, kept.body.detail]).toEqual([
      409,
      expect.stringContaining('1 permit and 0 inspections'),
    ])
    expect((await put(`${here}/systems/${cottage}`, 7, gone)).status).toBe(412)
    const astray = {
      ...gone,
      parcels: [{ parcel: '07-9999-0001' }, { parcel: number, serves: false, liesOn: false }],
    }
    const faults = await put(`${here}/systems/${cottage}`, 1, astray)
    expect(faults.body.errors.map((it: { pointer: string }) => it.pointer)).toEqual([
      '/parcels/0/parcel',
      '/parcels/1',
    ])
    const alone = await newParcel(services)
    const last = await put(`${here}/systems/${alone.id}`, 0, { ...gone, use: 'main' })
    expect([last.status, last.body.detail]).toEqual([409, expect.stringContaining('no system left')])
  })
})

describe('a system that serves two parcels', () => {
  test('takes both along: sizes by the sum, one inspection for both, a message for the subscribers of each', async () => {
    const [lot12, lot13] = [await newParcel(services), await newParcel(services)]
    await post('reviewer', `${here}/parcels/${lot12.number}/permits`, permit1974)
    const before = (await statusOf(lot13.number)).word
    expect(before).toBe('no-record')
    const subscribed = new Map<string, string>()
    for (const { number } of [lot12, lot13]) {
      const made = await post('agent', `${here}/subscriptions`, { parcel: number })
      subscribed.set(number, made.body.subscription.id)
    }

    const shared = await put(`${here}/systems/${lot12.id}`, 0, {
      use: 'main-house',
      label: 'shared field',
      parcels: [{ parcel: lot12.number }, { parcel: lot13.number, liesOn: false }],
      reason: 'Both houses drain to it.',
    })
    expect([shared.status, shared.body.system.shared]).toEqual([200, true])
    const own = await put(`${here}/systems/${lot13.id}`, 0, {
      use: 'main',
      parcels: [],
      reason: 'It drains to the field of the other lot.',
    })
    expect([own.status, own.body.consequence]).toEqual([200, null])
    const reading = async () =>
      (await ask('reviewer', { url: `${here}/parcels/${lot13.number}/reconciliation` })).body
    const unknown = await reading()
    expect(unknown.system).toBe(lot12.id)
    const sized = (it: { result: { outcomes: { check: string; because: string }[] } }) =>
      it.result.outcomes
        .filter(({ check }) => check === 'capacity-against-code')
        .map(({ because }) => because)
    expect(sized(unknown)[0]).toContain(`nothing gives the bedrooms of ${lot13.number}`)

    await put(`${here}/systems/${lot12.id}`, 1, {
      use: 'main-house',
      parcels: [{ parcel: lot12.number }, { parcel: lot13.number, liesOn: false, bedrooms: 2 }],
      reason: 'Counted from the street.',
    })
    const known = await reading()
    expect(sized(known)[0]).toContain('5 bedrooms')
    expect(known.inputs.system.serves).toMatchObject([
      { parcel: lot12.number, bedrooms: null },
      { parcel: lot13.number, bedrooms: 2 },
    ])
    const { same, missing } = (await ask('reviewer', { url: `${here}/reconciliations/${known.id}/replay` }))
      .body
    expect([same, missing]).toEqual([true, []])

    await inspected(lot13.number, lot12.id, { ...complete, bedroomsCounted: 5, servesAnotherLot: true })
    for (const { number } of [lot12, lot13]) {
      const now = await statusOf(number)
      expect(now.systems).toMatchObject([{ name: 'main house', word: now.word }])
      expect(['not-inspected', 'no-record']).not.toContain(now.word)
      expect(now.systems[0].notes.join(' ')).toContain('shared')
      expect(now.systems[0].notes.join(' ')).toContain('title company')
    }
    for (const [number, id] of subscribed) {
      const { items } = (await ask('agent', { url: `${here}/subscriptions/${id}/deliveries` })).body
      expect(items.length, number).toBeGreaterThan(0)
    }
    expect(JSON.stringify(await statusOf(lot12.number))).not.toContain(lot13.number)
    const queue = (number: string) => ask('reviewer', { url: `${here}/discrepancies?parcel=${number}` })
    const [mine, theirs] = [await queue(lot12.number), await queue(lot13.number)]
    expect(mine.body.items.length).toBeGreaterThan(0)
    expect(theirs.body.items).toEqual(mine.body.items)
  })
})

describe('what an inspection finds beside the system', () => {
  test('is a difference to review until the county has said so', async () => {
    const parcel = await newParcel(services)
    await post('reviewer', `${here}/parcels/${parcel.number}/permits`, permit1974)
    const { consequence } = await inspected(parcel.number, parcel.id, { ...complete, secondSystem: true })
    const found = consequence.changes.find((it: { kind: string }) => it.kind === 'system-not-on-record')
    expect(found).toMatchObject({ change: 'appeared' })
    const told = (await statusOf(parcel.number)).items.find(
      (it: { kind: string }) => it.kind === 'system-not-on-record',
    )
    expect(told.says).toBe('The inspector found a second septic system. The county has no record of it.')
    const said = await post('reviewer', `${here}/parcels/${parcel.number}/systems`, {
      use: 'laundry',
      parcels: [{ parcel: parcel.number }],
      reason: 'As the inspection found.',
    })
    const gone = said.body.consequence.changes.find(
      (it: { kind: string }) => it.kind === 'system-not-on-record',
    )
    expect(gone).toMatchObject({ change: 'vanished' })
  })
})

describe('a letter', () => {
  test('names each system, and is superseded when another is said', async () => {
    const parcel = await newParcel(services)
    await post('reviewer', `${here}/parcels/${parcel.number}/permits`, permit1974)
    const issued = await post('agent', `${here}/parcels/${parcel.number}/letters`, { kind: 'status' })
    expect(issued.status).toBe(201)
    await post('reviewer', `${here}/parcels/${parcel.number}/systems`, {
      use: 'laundry',
      parcels: [{ parcel: parcel.number }],
      reason: 'Shown by the owner.',
    })
    const check = await ask('nobody', { url: `/v1/letters/${issued.body.code}/verification` })
    expect(check.body.state).toBe('superseded')
    expect(check.body.since).toContain('system')
    const again = await post('agent', `${here}/parcels/${parcel.number}/letters`, { kind: 'status' })
    expect(again.status).toBe(201)
    const brief = await post('firm', `${here}/parcels/${parcel.number}/letters`, { kind: 'brief' })
    expect([brief.status, brief.body.errors[0].pointer]).toEqual([422, '/system'])
    const named = await post('firm', `${here}/parcels/${parcel.number}/letters`, {
      kind: 'brief',
      system: parcel.id,
    })
    expect(named.status).toBe(201)
  })
})
