import { expect, test } from 'vitest'
import { OutsideFailure } from '../../../src/base/outside-failure.ts'
import { buildApp } from '../../../src/http/app.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { services, people, app } = await testApp()
const valueIn = (text: string, figure: string): number | undefined => {
  const line = text.split('\n').find((it) => it.startsWith(`${figure} `))
  return line === undefined ? undefined : Number(line.split(' ').at(-1))
}
const figures = async (of = app) => (await of.inject('/metrics')).body

test('the work of every county is counted, whoever asks, and the age of the oldest that waits', async () => {
  const { county, account, organization } = people.firm
  const anHourAgo = new Date(Date.now() - 3_600_000)
  await administer(services.database, (tx) =>
    tx
      .insertInto('job')
      .values(
        (['waiting', 'waiting', 'running', 'failed', 'done'] as const).map((state) => ({
          county,
          id: services.newId(),
          kind: 'read-document',
          organization,
          requested_by: account,
          state,
          total: null,
          says: null,
          requested_at: anHourAgo,
        })),
      )
      .execute(),
  )
  const text = await figures()
  const jobs = ['waiting', 'running', 'failed', 'done'].map((state) =>
    valueIn(text, `asfound_jobs{state="${state}"}`),
  )
  expect(jobs).toEqual([2, 1, 1, undefined])
  const age = valueIn(text, 'asfound_job_oldest_waiting_seconds')!
  expect(age).toBeGreaterThanOrEqual(3_600)
  expect(age).toBeLessThan(3_700)
  expect(valueIn(text, 'asfound_audit_entries')).toBeGreaterThan(0)
  expect(valueIn(text, 'asfound_database_up')).toBe(1)
  const free = valueIn(text, 'asfound_disk_bytes{state="free"}')!
  expect(valueIn(text, 'asfound_disk_bytes{state="total"}')).toBeGreaterThan(free)
  expect(text).not.toContain(county)
})

test('without the database or the disk the others are told all the same, and never an old figure or a nought', async () => {
  const gone = async () => {
    throw new OutsideFailure('gone')
  }
  const broken = await buildApp({
    ...services,
    database: { ...services.database, perform: gone },
    files: { ...services.files, space: gone },
  })
  const text = await figures(broken)
  await broken.close()
  expect(valueIn(text, 'asfound_database_up')).toBe(0)
  for (const figure of ['asfound_jobs', 'asfound_job_oldest', 'asfound_audit', 'asfound_disk_bytes'])
    expect(text).not.toMatch(new RegExp(`^${figure}`, 'm'))
  expect(valueIn(text, 'asfound_database_connections{state="most"}')).toBeGreaterThan(0)
})

test('a database that says nothing makes nobody wait', async () => {
  const silent = await buildApp({
    ...services,
    database: { ...services.database, perform: () => new Promise(() => {}) },
  })
  const from = performance.now()
  expect(valueIn(await figures(silent), 'asfound_database_up')).toBe(0)
  expect(performance.now() - from).toBeLessThan(6_000)
  await silent.close()
})
