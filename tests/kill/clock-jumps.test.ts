import pg from 'pg'
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { callerFinder } from '../../src/http/access/caller.ts'
import { MISSES_PER_MINUTE } from '../../src/http/plugins/guesses.ts'
import { openJobs } from '../../src/jobs/start.ts'
import { setPassword } from '../../src/operations/access/set-password.ts'
import { signIn } from '../../src/operations/access/sign-in.ts'
import { issueToken } from '../../src/store/access/enrol.ts'
import { tokenHash } from '../../src/store/access/token.ts'
import { verifyAudit } from '../../src/store/audit/verify-audit.ts'
import { administer, transact } from '../../src/store/database/transact.ts'
import { newId } from '../../src/store/new-id.ts'
import { testApp } from '../support/app.ts'
import { COUNTY } from '../support/people.ts'
import { inspectionThatDiffers, newParcel, permit1974, repair1996 } from '../support/quillback.ts'
import { shiftedClock } from './shifted-clock.ts'

/** The clock of the service's machine is moved by hours, forward and back, while the database's goes on as it was. */

const { services, people, ask, url } = await testApp()
const { database } = services
const clock = shiftedClock()
const troubles: string[] = []
const jobs = await openJobs({
  ...services,
  url,
  database,
  atOnce: 1,
  onTrouble: (fault) => void troubles.push(fault.message),
})
const ran: string[] = []
await jobs.work({ 'reconcile-parcel': async ({ id }) => void ran.push(id) })
afterAll(async () => {
  clock.restore()
  await jobs.stop(2_000)
})
beforeEach(() => clock.hours(0))
afterEach(() => clock.hours(0))

const here = '/v1/counties/quillback'
const JUMPS = [0, 5, -5, 26, -26, 0]
const post = async (
  who: 'reviewer' | 'firm',
  at: string,
  body: object,
  headers: Record<string, string> = {},
) => ask(who, { method: 'POST', url: `${here}${at}`, body, headers })

test('ids sort as they were made, whatever the clock does', () => {
  const ids = JUMPS.flatMap((ahead) => {
    clock.hours(ahead)
    return Array.from({ length: 200 }, newId)
  })
  expect(ids.toSorted()).toEqual(ids)
  expect(new Set(ids).size).toBe(ids.length)
})

test('the newest answer is the one made last, a repeat gets its first answer, and the audit follows', async () => {
  const { number } = await newParcel(services)
  const answers: { id: string; status: number; key: string; body: object; first: unknown }[] = []
  for (const [at, ahead] of JUMPS.entries()) {
    clock.hours(ahead)
    const key = `jump-${number}-${at}`
    const body = { ...(at % 2 ? repair1996 : permit1974), number: `J-${at}` }
    const answer = await post('reviewer', `/parcels/${number}/permits`, body, { 'idempotency-key': key })
    const id = answer.body.consequence?.reconciliation
    answers.push({ id, status: answer.status, key, body, first: answer.body })
    const now = await ask('reviewer', { url: `${here}/parcels/${number}/reconciliation` })
    expect([answer.status, now.body.id]).toEqual([201, id])
  }
  clock.hours(-3)
  for (const { key, body, first } of answers) {
    const again = await post('reviewer', `/parcels/${number}/permits`, body, { 'idempotency-key': key })
    expect([again.headers['idempotency-replayed'], again.body]).toEqual(['true', first])
  }
  const list = await ask('reviewer', { url: `${here}/parcels/${number}/reconciliations?limit=50` })
  expect(list.body.items.map((it: { id: string }) => it.id)).toEqual(answers.map(({ id }) => id).toReversed())
  const inspection = await post('firm', `/parcels/${number}/findings`, inspectionThatDiffers)
  const handedIn = await ask('firm', {
    method: 'POST',
    url: `${here}/findings/${inspection.body.id}/submission`,
    headers: { 'if-match': '"r1"' },
  })
  const last = await ask('reviewer', { url: `${here}/parcels/${number}/reconciliation` })
  expect([handedIn.status, last.body.id]).toEqual([200, handedIn.body.consequence.reconciliation])

  const client = new pg.Client({ connectionString: url })
  await client.connect()
  expect((await verifyAudit(client)).faults).toEqual([])
  await client.end()
})

describe('who is let in', () => {
  test('a token and a session that are good stay good, and one withdrawn is none', async () => {
    must(
      await setPassword(database, { ...people.reviewer, name: 'clock.desk', password: 'a slow brown river' }),
    )
    const { secret } = must(
      await signIn(services, {
        name: 'clock.desk',
        password: 'a slow brown river',
        address: '192.0.2.1',
        browser: null,
      }),
    )
    const bySession = () =>
      ask('nobody', { url: '/v1/counties', headers: { cookie: `asfound_session=${secret}` } })
    const fresh = await administer(database, (tx) =>
      issueToken(tx, {
        account: people.agent.account,
        name: 'three hours',
        counties: [COUNTY],
        expiresAt: new Date(Date.now() + 3 * 3_600_000),
      }),
    )
    const byToken = () =>
      ask('nobody', { url: '/v1/counties', headers: { authorization: `Bearer ${fresh}` } })
    for (const ahead of JUMPS) {
      clock.hours(ahead)
      expect([(await byToken()).status, (await bySession()).status]).toEqual([200, 200])
    }
    await administer(database, (tx) =>
      tx
        .updateTable('access_token')
        .set({ revoked_at: new Date() })
        .where('hash', '=', tokenHash(fresh))
        .execute(),
    )
    for (const ahead of JUMPS) {
      clock.hours(ahead)
      expect((await byToken()).status).toBe(401)
    }
  })

  test('who was remembered for five seconds is not remembered for hours', async () => {
    let asked = 0
    const watch = { hears: () => true, onChange: () => {}, close: async () => {} }
    const counting: typeof database = {
      ...database,
      perform: (asking, work) => {
        asked++
        return database.perform(asking, work)
      },
    }
    const finder = callerFinder(counting, services.clock, watch)
    clock.hours(5)
    await finder.find(people.firm.token)
    await finder.find(people.firm.token)
    expect(asked).toBe(1)
    clock.hours(0)
    await finder.find(people.firm.token)
    expect(asked).toBe(2)
  })

  test('nobody who mistyped waits for hours because the clock was set back', async () => {
    clock.hours(5)
    const verify = () => ask('nobody', { url: '/v1/letters/AAAA-AAAA-AAAA-AAAA/verification' })
    for (let i = 0; i < MISSES_PER_MINUTE + 1; i++) await verify()
    expect((await verify()).status).toBe(429)
    clock.hours(0)
    expect((await verify()).status).not.toBe(429)

    clock.hours(5)
    const asked = { name: 'clock.nobody', password: 'wrong', address: '192.0.2.2', browser: null }
    const tries = []
    for (let i = 0; i < 8; i++) tries.push(await signIn(services, asked))
    expect(tries.at(-1)).toMatchObject({ error: { why: 'wait' } })
    clock.hours(0)
    expect(await signIn(services, asked)).toMatchObject({ error: { why: 'wrong' } })
    // The tries were counted on: from then on it waits again.
    expect(await signIn(services, asked)).toMatchObject({ error: { why: 'wait' } })
  })
})

test('a job is run soon, however the clock stood when it was left', async () => {
  for (const ahead of JUMPS) {
    clock.hours(ahead)
    const id = await transact(database, people.reviewer, (tx) =>
      jobs.enqueue(tx, people.reviewer, 'reconcile-parcel', { parcel: 'p', occasion: 'asked-for' }),
    )
    await expect.poll(() => ran, { timeout: 8_000 }).toContain(id)
  }
})
