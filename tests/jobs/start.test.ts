import { sql } from 'kysely'
import { uuidv7 } from 'uuidv7'
import { afterAll, beforeEach, describe, expect, test } from 'vitest'
import type { JobRun } from '../../src/jobs/queue.ts'
import { openJobs } from '../../src/jobs/start.ts'
import { administer, transact } from '../../src/store/database/transact.ts'
import { emptyDatabase, testDatabase } from '../support/database.ts'
import { enrolPeople } from '../support/people.ts'

const { url, database } = await testDatabase()
const { reviewer, firm, rival } = await enrolPeople(database)
const troubles: string[] = []
const options = {
  url,
  database,
  clock: () => new Date(),
  newId: uuidv7,
  atOnce: 2,
  onTrouble: (fault: Error) => void troubles.push(fault.message),
}
const jobs = await openJobs(options)
afterAll(() => jobs.stop(2_000))

let handle: (run: JobRun<'read-document'>) => Promise<unknown> = async () => null
await jobs.work({ 'read-document': (run) => handle(run) })

beforeEach(() => {
  handle = async () => null
  troubles.length = 0
})

const leave = (actor = reviewer) =>
  transact(database, actor, (tx) => jobs.enqueue(tx, actor, 'read-document', { document: 'paper' }))

const look = (id: string, actor = reviewer) =>
  transact(database, actor, (tx) =>
    tx
      .selectFrom('job')
      .select(['state', 'done', 'total', 'says', 'result'])
      .where('county', '=', actor.county)
      .where('id', '=', id)
      .executeTakeFirst(),
  )

const stateOf = async (id: string) => (await look(id))?.state

describe('a job', () => {
  test('runs soon after its transaction, in the name of whoever left it, and its result is kept', async () => {
    const runs: JobRun<'read-document'>[] = []
    handle = async (run) => {
      runs.push(run)
      return { pages: 2 }
    }
    const id = await leave()
    await expect.poll(() => stateOf(id), { timeout: 10_000 }).toBe('done')
    const { account, organization, role, county } = reviewer
    expect(runs).toMatchObject([
      { id, actor: { account, organization, role, county }, data: { document: 'paper' } },
    ])
    expect((await look(id))?.result).toEqual({ pages: 2 })
  })

  test('was never there when its transaction is undone', async () => {
    const ran: string[] = []
    handle = async ({ id }) => void ran.push(id)
    let undone = ''
    const leaving = transact(database, reviewer, async (tx) => {
      undone = await jobs.enqueue(tx, reviewer, 'read-document', { document: 'paper' })
      throw new Error('undone')
    })
    await expect(leaving).rejects.toThrow('undone')
    const later = await leave()
    await expect.poll(() => stateOf(later), { timeout: 10_000 }).toBe('done')
    expect(ran).toEqual([later])
    expect(await look(undone)).toBeUndefined()
  })

  test('tells how far it is, and the last word is not lost', async () => {
    const seen: unknown[] = []
    handle = async ({ id, report }) => {
      for (let done = 1; done <= 50; done++) await report({ done, total: 50, says: `page ${done}` })
      seen.push(await look(id))
    }
    const id = await leave()
    await expect.poll(() => stateOf(id), { timeout: 10_000 }).toBe('done')
    expect(seen).toMatchObject([{ state: 'running', total: 50 }])
    expect(await look(id)).toMatchObject({ done: 50, total: 50, says: 'page 50' })
  })

  test('that fails is tried again', async () => {
    let tries = 0
    handle = async () => {
      tries++
      if (tries === 1) throw new Error('not yet')
      return 'at last'
    }
    const id = await leave()
    await expect.poll(() => stateOf(id), { timeout: 25_000, interval: 200 }).toBe('done')
    expect([tries, (await look(id))?.result, troubles.length]).toEqual([2, 'at last', 1])
  })

  test('is seen by the organization that left it and by reviewers, not by another firm', async () => {
    const id = await leave(firm)
    await expect.poll(() => stateOf(id), { timeout: 10_000 }).toBe('done')
    expect(await look(id, firm)).toMatchObject({ state: 'done' })
    expect(await look(id, rival)).toBeUndefined()
  })
})

test('a process that only leaves jobs runs none', async () => {
  const leaving = await openJobs(options)
  const id = await transact(database, reviewer, (tx) =>
    leaving.enqueue(tx, reviewer, 'reconcile-parcel', { parcel: 'p', occasion: 'test' }),
  )
  await leaving.check()
  await leaving.stop(1_000)
  expect(await stateOf(id)).toBe('waiting')
})

test('a job that failed as often as it may is told to be failed', async () => {
  const id = await transact(database, reviewer, (tx) =>
    jobs.enqueue(tx, reviewer, 'reconcile-parcel', { parcel: 'p', occasion: 'test' }),
  )
  await administer(database, (tx) => sql`update pgboss.job set retry_limit = 0 where id = ${id}`.execute(tx))
  const failing = await openJobs(options)
  const broken = async () => {
    throw new Error('never')
  }
  await failing.work({ 'reconcile-parcel': broken })
  await expect.poll(() => stateOf(id), { timeout: 20_000, interval: 200 }).toBe('failed')
  expect((await look(id))?.says).toBe('It failed at every try.')
  await failing.stop(2_000)
})

test('a queue that was not installed is told', async () => {
  await expect(openJobs({ ...options, url: await emptyDatabase() })).rejects.toThrow()
})
