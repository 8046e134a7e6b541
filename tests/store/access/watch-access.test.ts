import { afterAll, expect, test, vi } from 'vitest'
import { callerFinder } from '../../../src/http/access/caller.ts'
import { issueToken } from '../../../src/store/access/enrol.ts'
import { withdrawTokensOf } from '../../../src/store/access/tokens.ts'
import { watchAccess } from '../../../src/store/access/watch-access.ts'
import { memberOf } from '../../../src/store/database/actor.ts'
import { administer, transact } from '../../../src/store/database/transact.ts'
import { onServer, testDatabase } from '../../support/database.ts'
import { enrolPeople } from '../../support/people.ts'

const { url, database } = await testDatabase()
const { firm } = await enrolPeople(database)
const watch = watchAccess({ url, onTrouble: () => {} })
afterAll(() => watch.close())
await vi.waitFor(() => expect(watch.hears()).toBe(true), { timeout: 10_000 })

let asked = 0
const counting = {
  ...database,
  perform: ((...given: Parameters<typeof database.perform>) => {
    asked++
    return database.perform(...given)
  }) as typeof database.perform,
}
const finder = callerFinder(counting, () => new Date(), watch)
const newToken = () =>
  administer(database, (tx) => issueToken(tx, { account: firm.account, name: 't', counties: ['quillback'] }))

test('whoever was found a moment ago is not asked for again', async () => {
  const token = await newToken()
  await finder.find(token)
  const before = asked
  expect((await finder.find(token))?.account).toBe(firm.account)
  expect(asked).toBe(before)
})

test('a withdrawal by any process is known as soon as it is committed', async () => {
  const token = await newToken()
  expect(await finder.find(token)).toBeDefined()
  await transact(database, memberOf(firm), (tx) => withdrawTokensOf(tx, firm.account, new Date()))
  const committed = performance.now()
  await vi.waitFor(async () => expect(await finder.find(token)).toBeUndefined(), {
    interval: 5,
    timeout: 2_000,
  })
  // A notification is a round trip; far below the five seconds that a memory would last.
  expect(performance.now() - committed).toBeLessThan(1_500)
})

test('while nothing would be heard of, the database is asked each time; and hearing begins again', async () => {
  const token = await newToken()
  await finder.find(token)
  await onServer((client) =>
    client.query(
      `select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'asfound access'
      and datname = $1`,
      [new URL(url).pathname.slice(1)],
    ),
  )
  await vi.waitFor(() => expect(watch.hears()).toBe(false), { interval: 5, timeout: 2_000 })
  const before = asked
  await finder.find(token)
  await finder.find(token)
  expect(asked).toBe(before + 2)
  await vi.waitFor(() => expect(watch.hears()).toBe(true), { timeout: 10_000 })
})
