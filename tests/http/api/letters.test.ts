import { createHash } from 'node:crypto'
import { readdir, rm } from 'node:fs/promises'
import { compactVerify, createLocalJWKSet } from 'jose'
import { describe, expect, test } from 'vitest'
import { MISSES_PER_MINUTE } from '../../../src/http/plugins/guesses.ts'
import { newCode } from '../../../src/letters/code.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { retireSigningKey } from '../../../src/store/signing-keys.ts'
import { openLetter } from '../../letters/open-letter.ts'
import { testApp } from '../../support/app.ts'
import { PUBLIC_ADDRESS, testLetters } from '../../support/letters.ts'
import type { People } from '../../support/people.ts'
import {
  inspectionThatAgrees,
  inspectionThatDiffers,
  newParcel,
  permit1974,
  repair1996,
  standingClock,
} from '../../support/quillback.ts'

const time = standingClock('2026-11-02T15:00:00Z')
const { app, services, ask, people } = await testApp({ clock: time.clock })

type Who = keyof People | 'nobody'
const here = '/v1/counties/quillback'
const post = (who: Who, url: string, body?: object, headers: Record<string, string> = {}) =>
  ask(who, { method: 'POST', url, headers, ...(body ? { body } : {}) })

/** A parcel with a permit and an inspection of the firm's. */
async function inspected(findings = inspectionThatDiffers) {
  const parcel = await newParcel(services)
  const at = `${here}/parcels/${parcel.number}`
  await post('reviewer', `${at}/permits`, permit1974)
  const draft = await post('firm', `${at}/findings`, findings)
  const { body } = await post('firm', `${here}/findings/${draft.body.id}/submission`)
  return { parcel, at, consequence: body.consequence }
}
const issue = (who: Who, at: string, kind: string, headers?: Record<string, string>) =>
  post(who, `${at}/letters`, { kind }, headers)
const verification = (code: string) =>
  ask('nobody', { url: `/v1/letters/${encodeURIComponent(code)}/verification` })
const jwks = async () => JSON.parse((await app.inject('/.well-known/jwks.json')).body)
const pdfOf = async (who: Who, url: string) => {
  const authorization = who === 'nobody' ? {} : { authorization: `Bearer ${people[who].token}` }
  const response = await app.inject({ url, headers: authorization })
  return { status: response.statusCode, headers: response.headers, bytes: response.rawPayload }
}

describe('a status letter for an agent', async () => {
  const { parcel, at } = await inspected()
  const { status, body, headers } = await issue('agent', at, 'status')

  test('is numbered, dated and sealed', async () => {
    expect(status).toBe(201)
    expect(body).toMatchObject({
      kind: 'status',
      number: expect.stringMatching(/^2026-\d{5}$/),
      parcel: { number: parcel.number },
      issuedOn: '2026-11-02',
      asOf: '2026-11-02',
      status: 'under-review',
      checkAddress: `${PUBLIC_ADDRESS}/letters/${body.code}`,
      pages: 1,
      withdrawn: null,
    })
    expect(headers.location).toBe(`/v1/letters/${body.id}.pdf`)
  })

  test('is a PDF whose hash was signed, by a key that is published', async () => {
    const pdf = await pdfOf('agent', body.pdf)
    expect(pdf.status).toBe(200)
    expect(pdf.headers).toMatchObject({
      'content-type': 'application/pdf',
      'content-length': String(body.pdfBytes),
      'content-disposition': `inline; filename="status-${body.number}.pdf"`,
      etag: `"${body.pdfSha256}"`,
    })
    const sha256 = createHash('sha256').update(pdf.bytes).digest('hex')
    expect(sha256).toBe(body.pdfSha256)
    const { payload } = await compactVerify(body.signature, createLocalJWKSet(await jwks()))
    expect(JSON.parse(new TextDecoder().decode(payload))).toMatchObject({
      number: body.number,
      county: { id: 'quillback' },
      parcel: { number: parcel.number },
      status: 'under-review',
      pdfSha256: sha256,
      reconciliation: { id: expect.any(String) },
    })
  })

  test('shows the parcel, the word, who has to act and the check, and nothing of the inspector’s', async () => {
    const { text, readQr } = await openLetter((await pdfOf('agent', body.pdf)).bytes)
    const [page = ''] = text
    for (const words of [parcel.number, 'Under review', 'The county', body.code, body.number]) {
      expect(page).toContain(words)
    }
    for (const words of ['Heron Inspections', '718', ' gal ', 'sq ft']) expect(page).not.toContain(words)
    expect(await readQr()).toBe(body.checkAddress)
  })

  test('is not changed by asking again with the same key; without one it is another letter', async () => {
    const key = { 'idempotency-key': 'letter-1' }
    const [first, again] = [await issue('agent', at, 'status', key), await issue('agent', at, 'status', key)]
    expect(again.body).toEqual(first.body)
    expect(again.headers['idempotency-replayed']).toBe('true')
    const other = await issue('agent', at, 'status')
    expect(Number(other.body.number.slice(5))).toBe(Number(first.body.number.slice(5)) + 1)
    expect(other.body.code).not.toBe(first.body.code)
  })
})

describe('who may have which', async () => {
  const { at } = await inspected()
  test.each<[Who, string, number]>([
    ['agent', 'status', 201],
    ['agent', 'report', 403],
    ['agent', 'brief', 403],
    ['firm', 'status', 201],
    ['firm', 'report', 201],
    ['firm', 'brief', 201],
    ['reviewer', 'status', 201],
    ['reviewer', 'report', 201],
    ['reviewer', 'brief', 201],
    ['rival', 'brief', 201],
    // Another firm has no reconciliation of its own here.
    ['rival', 'report', 409],
    ['stranger', 'status', 404],
    ['nobody', 'status', 401],
  ])('%s, %s: %i', async (who, kind, expected) => {
    expect((await issue(who, at, kind)).status).toBe(expected)
  })

  test('a letter is seen by those it was given to, and by the county', async () => {
    const letter = (await issue('agent', at, 'status')).body
    const seen = await Promise.all(
      (['agent', 'reviewer', 'firm', 'rival', 'stranger', 'nobody'] as const).map(async (who) => [
        who,
        (await pdfOf(who, letter.pdf)).status,
      ]),
    )
    expect(Object.fromEntries(seen)).toEqual({
      agent: 200,
      reviewer: 200,
      firm: 404,
      rival: 404,
      stranger: 404,
      nobody: 401,
    })
    const listed = await ask('agent', { url: `${at}/letters` })
    expect(listed.body.items.map(({ kind }: { kind: string }) => kind)).toEqual(['status', 'status'])
    expect((await ask('reviewer', { url: `${at}/letters` })).body.items.length).toBeGreaterThan(7)
  })

  test('bad input says what and where', async () => {
    const bad = await issue('agent', at, 'postcard')
    expect([bad.status, bad.body.errors[0].pointer]).toEqual([422, '/kind'])
    expect((await issue('agent', `${here}/parcels/99-0000-0000`, 'status')).status).toBe(404)
    expect((await pdfOf('agent', '/v1/letters/nothing.pdf')).status).toBe(404)
  })
})

describe('a report', async () => {
  const { at } = await inspected()

  test('of the county has the inspection, the working and the decisions; one of a firm its own sentences', async () => {
    const [ours, theirs] = [await issue('reviewer', at, 'report'), await issue('firm', at, 'report')]
    const [county, firm] = [await pdfOf('reviewer', ours.body.pdf), await pdfOf('firm', theirs.body.pdf)]
    const [one, two] = [await openLetter(county.bytes), await openLetter(firm.bytes)]
    for (const words of [
      'Heron Inspections',
      '6 ft × 4 ft × 4 ft',
      'What could not be told, and why',
      'Computed by',
    ]) {
      expect(one.text.join(' ')).toContain(words)
    }
    expect(one.text.join(' ')).toContain(
      'Either the record is wrong or this is not the tank that was permitted',
    )
    expect(two.text.join(' ')).toContain('keep the readings. A reviewer will check them')
  })
})

describe('the check', () => {
  test('is open to anyone who holds the code, in any spelling, and gives what can be checked offline', async () => {
    const { at } = await inspected()
    const { body } = await issue('agent', at, 'status')
    const checked = await verification(body.code.toLowerCase().replaceAll('-', ' '))
    expect(checked.status).toBe(200)
    expect(checked.headers['cache-control']).toBe('no-store')
    expect(checked.body).toMatchObject({
      state: 'valid',
      since: [],
      newer: null,
      withdrawn: null,
      signature: body.signature,
    })
    const { payload } = await compactVerify(checked.body.signature, createLocalJWKSet(await jwks()))
    const signed = JSON.parse(new TextDecoder().decode(payload))
    expect(signed).toMatchObject({ number: body.number, status: body.status, pdfSha256: body.pdfSha256 })
    // Whatever the signed part says is said nowhere else, where it could be altered unseen.
    expect(Object.keys(checked.body).filter((name) => name in signed)).toEqual([])
    expect(checked.body).not.toHaveProperty('statement')
  })

  test.each(['status', 'report', 'brief'])(
    'a %s is superseded by a permit that came in later',
    async (kind) => {
      const { at } = await inspected()
      const { body } = await issue('firm', at, kind)
      expect((await verification(body.code)).body.state).toBe('valid')
      await post('reviewer', `${at}/permits`, repair1996)
      const checked = (await verification(body.code)).body
      expect(checked.state).toBe('superseded')
      expect(checked.since[0]).toBe('permit')
      const newer = (await issue('firm', at, kind)).body
      expect((await verification(newer.code)).body.state).toBe('valid')
      expect((await verification(body.code)).body.newer).toEqual({
        number: newer.number,
        issuedOn: '2026-11-02',
      })
      const other = (await issue('rival', at, 'brief')).body
      expect((await verification(body.code)).body.newer.number).not.toBe(other.number)
    },
  )

  test('a status letter is superseded by a decision, a brief is not', async () => {
    const { at, consequence } = await inspected()
    const [letter, brief] = [await issue('agent', at, 'status'), await issue('firm', at, 'brief')]
    const id = consequence.changes[0].discrepancy
    const read = await ask('reviewer', { url: `${here}/discrepancies/${id}` })
    const decided = await post(
      'reviewer',
      `${here}/discrepancies/${id}/decisions`,
      { action: 'accept', reason: 'Seen on the drawing of 1974 and accepted.' },
      { 'if-match': String(read.headers.etag) },
    )
    expect(decided.status).toBe(201)
    expect((await verification(letter.body.code)).body).toMatchObject({
      state: 'superseded',
      since: ['difference'],
    })
    expect((await verification(brief.body.code)).body.state).toBe('valid')
  })

  test('is superseded when time alone has changed the answer', async () => {
    const { at } = await inspected(inspectionThatAgrees)
    const { body } = await issue('agent', at, 'status')
    expect(body.status).toBe('matches')
    time.set('2026-12-02T15:00:00Z')
    expect((await verification(body.code)).body.state).toBe('valid')
    time.set('2029-01-05T15:00:00Z')
    const checked = (await verification(body.code)).body
    expect(checked.state).toBe('superseded')
    expect(checked.since).toContain('status')
    expect((await issue('agent', at, 'status')).body.number).toBe('2029-00001')
    time.set('2026-11-02T15:00:00Z')
  })

  test('of a withdrawn letter says so, with the reason, before anything else', async () => {
    const { at } = await inspected()
    const { body } = await issue('agent', at, 'status')
    const url = `${here}/letters/${body.id}/withdrawal`
    expect((await post('agent', url, { reason: 'No reason at all' })).status).toBe(403)
    expect((await post('stranger', url, { reason: 'No reason at all' })).status).toBe(404)
    expect((await post('reviewer', url, { reason: ' ' })).body.errors[0].pointer).toBe('/reason')
    expect((await post('reviewer', url, { reason: 'Issued for the wrong parcel.' })).status).toBe(201)
    expect((await post('reviewer', url, { reason: 'Issued for the wrong parcel.' })).status).toBe(409)
    await post('reviewer', `${at}/permits`, repair1996)
    expect((await verification(body.code)).body).toMatchObject({
      state: 'withdrawn',
      withdrawn: { on: '2026-11-02', reason: 'Issued for the wrong parcel.' },
    })
    const [listed] = (await ask('agent', { url: `${at}/letters` })).body.items
    expect(listed.withdrawn.reason).toBe('Issued for the wrong parcel.')
    expect((await pdfOf('agent', body.pdf)).status).toBe(200)
  })
})

describe('what was sealed stays', () => {
  test('a lost file is printed again to the same bytes', async () => {
    const { at } = await inspected()
    for (const kind of ['status', 'report', 'brief']) {
      const { body } = await issue('firm', at, kind)
      const before = (await pdfOf('firm', body.pdf)).bytes
      const place = await services.files.pathOf(body.pdfSha256)
      await rm(place!)
      expect((await pdfOf('firm', body.pdf)).bytes.equals(before)).toBe(true)
      expect(await readdir(place!.slice(0, -65))).toContain(body.pdfSha256)
    }
  })

  test('nobody changes a letter, not even the service', async () => {
    const { at } = await inspected()
    const { body } = await issue('agent', at, 'status')
    const change = services.database.perform(people.reviewer, (tx) =>
      tx.updateTable('letter').set({ number: '1' }).where('id', '=', body.id).execute(),
    )
    await expect(change).rejects.toThrow('permission denied')
  })

  test('numbers are given once each, also to many at once', async () => {
    const { at } = await inspected()
    const issued = await Promise.all(Array.from({ length: 8 }, () => issue('agent', at, 'status')))
    const numbers = issued.map(({ body }) => Number(body.number.slice(5))).sort((a, b) => a - b)
    expect(numbers).toEqual(Array.from({ length: 8 }, (_, n) => numbers[0]! + n))
  })

  test('letters of a retired key go on being valid; it signs no more, and a new one does', async () => {
    const { at } = await inspected()
    const old = (await issue('agent', at, 'status')).body
    const { kid } = services.letters.signer.publicKey
    await administer(services.database, (tx) => retireSigningKey(tx, kid, time.clock()))
    const refused = await issue('agent', at, 'status')
    expect([refused.status, refused.body.detail]).toEqual([503, expect.stringContaining('was retired')])
    const next = await testLetters(services.database)
    Object.assign(services.letters, next)
    // The running service goes on with its own press and key; a new start has the new one.
    const { keys } = await jwks()
    expect(keys.map((key: { kid: string }) => key.kid)).toEqual(
      expect.arrayContaining([kid, next.signer.publicKey.kid]),
    )
    for (const key of keys) expect(Object.keys(key).sort()).toEqual(['alg', 'crv', 'kid', 'kty', 'use', 'x'])
    expect((await verification(old.code)).body.state).toBe('valid')
    const fresh = (await issue('agent', at, 'status')).body
    const { protectedHeader } = await compactVerify(fresh.signature, createLocalJWKSet({ keys }))
    expect(protectedHeader.kid).toBe(next.signer.publicKey.kid)
  })
})

describe('guessing', () => {
  test('a code that never was is not there, a mistyped one is told, and after too many nobody at that address is answered', async () => {
    const { at } = await inspected()
    const { body } = await issue('agent', at, 'status')
    expect((await verification(newCode())).status).toBe(404)
    const mistyped = await verification(`${body.code.slice(0, -1)}${body.code.endsWith('3') ? '4' : '3'}`)
    expect([mistyped.status, mistyped.body.errors]).toEqual([
      422,
      [{ in: 'path', pointer: '/code', message: expect.stringContaining('not a valid code') }],
    ])
    for (let tries = 2; tries < MISSES_PER_MINUTE; tries++) await verification(newCode())
    const turnedAway = await verification(body.code)
    expect([turnedAway.status, Number(turnedAway.headers['retry-after'])]).toEqual([
      429,
      expect.closeTo(60, -1),
    ])
    time.set('2026-11-02T15:01:01Z')
    expect((await verification(body.code)).status).toBe(200)
  })
})
