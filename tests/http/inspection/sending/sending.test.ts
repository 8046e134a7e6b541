import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { InspectionFile } from '../../../../src/http/inspection/file.ts'
import { formOf } from '../../../../src/http/inspection/form/from-record.ts'
import { readForm } from '../../../../src/http/inspection/form/read.ts'
import { type InspectionForm, withPart } from '../../../../src/http/inspection/form/typed.ts'
import { clashes, settled } from '../../../../src/http/inspection/sending/clashes.ts'
import {
  beginKept,
  changed,
  type KeptInspection,
} from '../../../../src/http/inspection/sending/kept-inspection.ts'
import { meet, settle } from '../../../../src/http/inspection/sending/meet.ts'
import { nextRequest } from '../../../../src/http/inspection/sending/next-request.ts'
import { type Telling, takeAnswer } from '../../../../src/http/inspection/sending/take-answer.ts'
import { type Fate, lossyService } from './lossy-service.ts'

const PARTS = [
  { id: 'tank', key: 'p/tank', kind: 'tank', label: 'tank' },
  { id: 'pit', key: 'p/pit', kind: 'seepage-pit', label: 'pit' },
] as const
const telling: Telling = {
  told: (record) => formOf(record, PARTS),
  tidy: (form) => {
    const { record } = readForm(form)
    return record ? formOf(record, PARTS) : form
  },
}
const NOW = '2026-10-12T15:00:00Z'
const parcel = { id: 'parcel', number: '07-0412-0031', address: null }
const START: InspectionForm = {
  start: { inspectedOn: '2026-10-12', occupancy: 'occupied' },
  parts: [],
  notes: '',
}
let keys = 0
const newInspection = (): KeptInspection =>
  beginKept(
    { account: 'a', county: 'quillback', parcel, form: START, base: null },
    () => `key-${++keys}`,
    NOW,
  )

const withTank = (form: InspectionForm, typed: Record<string, string>): InspectionForm =>
  withPart(form, { ...PARTS[0], typed: { outcome: 'found', ...typed } })
const type = (inspection: KeptInspection, form: InspectionForm): KeptInspection =>
  changed(inspection, form, NOW)
const isReadable = ({ form }: KeptInspection): boolean => readForm(form).record !== null

/** Sends whatever is to be sent, each request meeting the next fate; with none left, all arrive. */
function sendAll(
  service: ReturnType<typeof lossyService>,
  inspection: KeptInspection,
  fates: Fate[] = [],
): KeptInspection {
  let now = inspection
  for (let at = 0; at < 50; at++) {
    const request = nextRequest(now, isReadable(now))
    if (!request) return now
    const fate = fates.shift() ?? 'answered'
    const came = service.send(request, fate)
    now = takeAnswer({ ...now, request }, came, telling, NOW)
    if (came === null) return now
  }
  throw new Error('it goes on for ever')
}

describe('sent once', () => {
  test('whatever gets lost on the way, however often: one inspection, submitted once, saying what was typed last', () => {
    const edit = fc.constantFrom('7\'-10"', '8 ft', '94 in', '03')
    const fate = fc.constantFrom<Fate>('answered', 'answer-lost', 'lost')
    fc.assert(
      fc.property(fc.array(fc.oneof(edit, fate), { maxLength: 40 }), (happens) => {
        const service = lossyService()
        let inspection = newInspection()
        for (const it of happens) {
          const isFate = it === 'answered' || it === 'lost' || it === 'answer-lost'
          if (isFate) inspection = sendAll(service, inspection, [it as Fate, 'lost'])
          else if (it === '03')
            inspection = type(inspection, {
              ...inspection.form,
              start: { ...inspection.form.start, people: '03' },
            })
          else
            inspection = type(
              inspection,
              withTank(inspection.form, { length: it, 'length.how': 'inside-tape' }),
            )
        }
        inspection = { ...type(inspection, { ...inspection.form, notes: 'done' }), handIn: true }
        for (const fateOf of ['answer-lost', 'lost', 'answer-lost', 'answer-lost'] as const)
          inspection = sendAll(service, inspection, ['answered', fateOf])
        inspection = sendAll(service, inspection)
        expect(inspection.other).toBeNull()
        expect(inspection.done).not.toBeNull()
        expect([service.drafts.size, service.submissions()]).toEqual([1, 1])
        const [kept] = [...service.drafts.values()]
        expect(kept!.record).toEqual(readForm(inspection.form).record)
      }),
      { numRuns: 300 },
    )
  })

  test('a request is the same to the byte when it is sent again, whatever was typed since', () => {
    const service = lossyService()
    let inspection = type(newInspection(), withTank(START, { length: '8 ft' }))
    inspection = sendAll(service, inspection, ['answer-lost'])
    const first = inspection.request
    inspection = type(inspection, withTank(START, { length: '9 ft' }))
    expect(nextRequest(inspection, true)).toEqual(first)
    inspection = sendAll(service, inspection)
    expect(service.drafts.size).toBe(1)
    expect(inspection.saved).toBe(inspection.change)
  })

  test('nothing leaves while a field can’t be read; it is kept, and goes once it is mended', () => {
    const service = lossyService()
    let inspection = sendAll(service, type(newInspection(), withTank(START, { length: '7.10' })))
    expect([service.drafts.size, inspection.form.parts[0]?.typed.length]).toEqual([0, '7.10'])
    inspection = sendAll(service, type(inspection, withTank(START, { length: '7\'-10"' })))
    expect(service.drafts.size).toBe(1)
  })

  test('signed out: kept, said, and sent after signing in', () => {
    const service = lossyService()
    let inspection = type(newInspection(), withTank(START, {}))
    inspection = { ...inspection, request: nextRequest(inspection, true) }
    inspection = takeAnswer(
      inspection,
      { status: 401, etag: null, body: { type: '/problems/not-signed-in' } },
      telling,
      NOW,
    )
    expect(inspection.trouble?.kind).toBe('sign-in')
    expect(sendAll(service, inspection).base?.id).toBe('f1')
  })

  test('refused: said in the service’s words, and tried again only after something was changed', () => {
    const refusal = { type: '/problems/invalid-input', errors: [{ message: '2027-01-01 is still to come' }] }
    let inspection = type(newInspection(), withTank(START, {}))
    inspection = { ...inspection, request: nextRequest(inspection, true) }
    inspection = takeAnswer(inspection, { status: 422, etag: null, body: refusal }, telling, NOW)
    expect([inspection.trouble?.says, nextRequest(inspection, true)]).toEqual([
      '2027-01-01 is still to come',
      null,
    ])
    expect(nextRequest(type(inspection, inspection.form), true)?.what).toBe('begin')
  })

  test.each([500, 503, 429, 408])('%s leaves everything as it is, to be tried again', (status) => {
    let inspection = type(newInspection(), withTank(START, {}))
    inspection = { ...inspection, request: nextRequest(inspection, true) }
    expect(takeAnswer(inspection, { status, etag: null, body: null }, telling, NOW)).toEqual(inspection)
  })
})

describe('two phones on one inspection', () => {
  const begun = () => {
    const service = lossyService()
    const first = sendAll(service, type(newInspection(), withTank(START, { length: '8 ft' })))
    const file = (): Pick<InspectionFile, 'draft'> => {
      const { id, revision, record } = service.drafts.get(first.base!.id)!
      return { draft: { id, revision, form: formOf(record, PARTS), changedAt: NOW, amends: false } }
    }
    return { service, first, file }
  }

  test('with nothing of its own, the other takes what the service has', () => {
    const { first, file } = begun()
    const second = meet(newInspection(), file(), telling)
    expect(second.base).toMatchObject({ id: first.base!.id, revision: 1 })
    expect(second.form.parts[0]?.typed.length).toBe('8 ft')
  })

  test('what was typed on both is shown side by side, and nothing is written over', () => {
    const { service, first, file } = begun()
    let second = meet(newInspection(), file(), telling)
    sendAll(service, type(first, withTank(first.form, { length: '8 ft', width: '4 ft' })))
    second = sendAll(service, type(second, withTank(second.form, { length: '9 ft' })))
    expect(second.other?.base.revision).toBe(2)
    expect(nextRequest(second, true)).toBeNull()
    const list = clashes(telling.tidy(second.form), second.other!.base.form, second.base!.form)
    expect(
      list.map(({ where, question, mine, theirs, changed: by }) => [where, question, mine, theirs, by]),
    ).toEqual([
      ['Tank', 'Inside length', '9 ft (tape, inside)', '8 ft (tape, inside)', 'mine'],
      ['Tank', 'Inside width', null, '4 ft (tape, inside)', 'theirs'],
    ])
    const chosen = settle(second, (id) => (id === 'tank/length' ? 'mine' : 'theirs'), telling, NOW)
    sendAll(service, chosen)
    const kept = service.drafts.get('f1')!
    expect([
      kept.record.components[0]?.length?.asWritten,
      kept.record.components[0]?.width?.asWritten,
    ]).toEqual(['9 ft', '4 ft'])
  })

  test('begun on both without signal: the second finds the first, and joins it', () => {
    const { service, file } = begun()
    const second = meet(type(newInspection(), { ...START, notes: 'mine' }), file(), telling)
    expect(second.other?.base.id).toBe('f1')
    const joined = sendAll(
      service,
      settle(second, (id) => (id.startsWith('review') ? 'mine' : 'theirs'), telling, NOW),
    )
    expect([service.drafts.size, service.drafts.get('f1')?.record.notes]).toEqual([1, 'mine'])
    expect(joined.form.parts[0]?.typed.length).toBe('8 ft')
  })

  test('submitted on one: the other’s changes go into an amendment, or nowhere', () => {
    const { service, first, file } = begun()
    const second = meet(newInspection(), file(), telling)
    sendAll(service, { ...first, handIn: true })
    const late = sendAll(service, type(second, { ...second.form, notes: 'two dogs' }))
    expect(late.other?.handedIn).toBe(true)
    const amended = sendAll(
      service,
      settle(late, () => 'mine', telling, NOW),
    )
    expect([...service.drafts.values()].map(({ amends, record }) => [amends, record.notes])).toEqual([
      [null, null],
      ['f1', 'two dogs'],
    ])
    expect(amended.base?.id).toBe('f2')
    expect(settle(late, () => 'theirs', telling, NOW).done?.findings).toBe('f1')
  })
})

describe('two copies', () => {
  const other = withPart(START, {
    id: 'added-1',
    key: null,
    kind: 'seepage-pit',
    label: 'old pit',
    typed: { outcome: 'found' },
  })
  const mine = withPart(START, {
    id: 'added-1',
    key: null,
    kind: 'well',
    label: 'well',
    typed: { outcome: 'found' },
  })

  test('things added on each are told apart by their names, and both can stay', () => {
    const list = clashes(mine, other, START)
    expect(list.map(({ where, changed: by }) => [where, by])).toEqual([
      ['Well', 'mine'],
      ['Old pit', 'theirs'],
    ])
    const both = settled(mine, other, (id) =>
      list.find((it) => it.id === id)?.where === 'Well' ? 'mine' : 'theirs',
    )
    expect(both.parts.map(({ label }) => label).sort()).toEqual(['old pit', 'well'])
    expect(new Set(both.parts.map(({ id }) => id)).size).toBe(2)
  })

  test('the same answers are no difference, whatever is empty', () => {
    expect(clashes(withTank(START, { width: '' }), withTank(START, {}), null)).toEqual([])
  })
})
