import { sql } from 'kysely'
import { beforeEach, expect, test } from 'vitest'
import { forgetOldAnswers, keepForgetting } from '../../../src/operations/upkeep/keep-forgetting.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { newParcel, permit1974 } from '../../support/quillback.ts'

const { services, people, ask } = await testApp()
const { database } = services

const DAYS = ['89 days', '89 days 23:59', '90 days 00:01', '400 days']

beforeEach(() =>
  administer(database, async (tx) => {
    await sql`delete from idempotency_key`.execute(tx)
    for (const { county, account } of [people.reviewer, people.stranger])
      for (const age of DAYS)
        await sql`insert into idempotency_key (county, account, key, request_hash, status, headers, body, answered_at)
          values (${county}, ${account}, ${age}, '', 201, '{}', '{}', now() - ${age}::interval)`.execute(tx)
  }),
)

const kept = () =>
  administer(database, async (tx) => {
    const rows = await tx
      .selectFrom('idempotency_key')
      .select(['county', 'key'])
      .orderBy('county')
      .orderBy('answered_at', 'desc')
      .execute()
    return rows.map(({ county, key }) => `${county} ${key}`)
  })
const YOUNG = ['elsewhere', 'quillback'].flatMap((county) =>
  DAYS.slice(0, 2).map((age) => `${county} ${age}`),
)

test('an answer is forgotten after 90 days, in every county, and no younger one', async () => {
  expect(await forgetOldAnswers(database)).toBe(4)
  expect(await kept()).toEqual(YOUNG)
  expect(await forgetOldAnswers(database)).toBe(0)
})

test('two processes at once forget each answer once, and none waits for the other', async () => {
  const counts = await Promise.all([forgetOldAnswers(database), forgetOldAnswers(database)])
  expect(counts.reduce((sum, it) => sum + it)).toBe(4)
  expect(await kept()).toEqual(YOUNG)
})

test('a request under a key that was forgotten is a new one', async () => {
  const { number } = await newParcel(services)
  const enter = (named: string) =>
    ask('reviewer', {
      method: 'POST',
      url: `/v1/counties/quillback/parcels/${number}/permits`,
      headers: { 'idempotency-key': 'the-same' },
      body: { ...permit1974, number: named },
    })
  expect((await enter('one')).status).toBe(201)
  expect((await enter('two')).body.type).toBe('/problems/key-reused')
  await administer(database, (tx) =>
    sql`update idempotency_key set answered_at = now() - interval '91 days' where key = 'the-same'`.execute(
      tx,
    ),
  )
  await forgetOldAnswers(database)
  expect((await enter('two')).status).toBe(201)
})

test('it goes on by itself until it is stopped, and a database that is away does not end it', async () => {
  const troubles: string[] = []
  let away = true
  const flaky: typeof database = {
    ...database,
    perform: (asking, work) => (away ? Promise.reject(new Error('away')) : database.perform(asking, work)),
  }
  const stop = keepForgetting(flaky, {
    firstMs: 1,
    everyMs: 20,
    onTrouble: (fault) => void troubles.push(fault.message),
  })
  await expect.poll(() => troubles.length).toBeGreaterThan(1)
  away = false
  await expect.poll(kept).toEqual(YOUNG)
  await stop()
})
