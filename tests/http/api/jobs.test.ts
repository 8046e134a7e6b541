import { describe, expect, test } from 'vitest'
import { noteJob } from '../../../src/jobs/job-record.ts'
import { serviceIn } from '../../../src/store/database/actor.ts'
import { transact } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { COUNTY } from '../../support/people.ts'

const { app, services, ask, people } = await testApp()
const { database, clock, newId } = services

async function leave(who: 'firm' | 'reviewer'): Promise<string> {
  const id = newId()
  const { organization, account } = people[who]
  await transact(database, serviceIn(COUNTY), (tx) =>
    tx
      .insertInto('job')
      .values({
        county: COUNTY,
        id,
        kind: 'read-document',
        organization,
        requested_by: account,
        state: 'waiting',
        total: null,
        says: null,
        requested_at: clock(),
        changed_at: clock(),
      })
      .execute(),
  )
  return id
}
const note = (id: string, change: Parameters<typeof noteJob>[3]) =>
  noteJob(database, COUNTY, id, change, clock())
const at = (id: string) => `/v1/counties/${COUNTY}/jobs/${id}`

describe('a job', () => {
  test('says how far it is, and what came of it', async () => {
    const id = await leave('reviewer')
    expect((await ask('reviewer', { url: at(id) })).body).toMatchObject({
      state: 'waiting',
      done: 0,
      total: null,
    })
    await note(id, { state: 'running', done: 3, total: 10, says: 'page 3 read' })
    expect((await ask('reviewer', { url: at(id) })).body).toMatchObject({ done: 3, total: 10, result: null })
    await note(id, { state: 'done', result: { pages: 10 } })
    expect((await ask('reviewer', { url: at(id) })).body).toMatchObject({
      state: 'done',
      result: { pages: 10 },
    })
  })

  test('is seen by whoever left it and by reviewers', async () => {
    const id = await leave('firm')
    const seen = await Promise.all(
      (['firm', 'reviewer', 'rival', 'agent', 'stranger'] as const).map(
        async (who) => (await ask(who, { url: at(id) })).status,
      ),
    )
    expect(seen).toEqual([200, 200, 404, 404, 404])
    expect((await ask('rival', { url: `${at(id)}/events` })).status).toBe(404)
  })

  test('is told as events as it goes on, until it ends', async () => {
    const id = await leave('reviewer')
    const { statusCode, headers, stream } = await app.inject({
      url: `${at(id)}/events`,
      headers: { authorization: `Bearer ${people.reviewer.token}` },
      payloadAsStream: true,
    })
    expect([statusCode, headers['content-type']]).toEqual([200, 'text/event-stream; charset=utf-8'])
    // Each step is taken once the one before has been told.
    const steps: Parameters<typeof note>[1][] = [
      { state: 'running', done: 1, total: 2, says: 'page 1 read' },
      { state: 'done', done: 2, result: {} },
    ]
    let body = ''
    for await (const chunk of stream()) {
      body += String(chunk)
      if (body.split('event: job').length > 3 - steps.length) {
        const next = steps.shift()
        if (next) await note(id, next)
      }
    }
    const events = body.split('\n\n').filter((it) => it.includes('event: job'))
    const told = events.map(
      (it) => JSON.parse(/^data: (.*)$/m.exec(it)![1]!) as { state: string; done: number },
    )
    expect(told.map(({ state, done }) => `${state} ${done}`)).toEqual(['waiting 0', 'running 1', 'done 2'])
    for (const it of events) expect(it).toMatch(/^id: \d+$/m)
  })

  test('that has ended is told at once', async () => {
    const id = await leave('reviewer')
    await note(id, { state: 'failed', says: 'It failed at every try.' })
    const { body } = await ask('reviewer', { url: `${at(id)}/events` })
    expect(String(body).match(/event: job/g)).toHaveLength(1)
  })
})
