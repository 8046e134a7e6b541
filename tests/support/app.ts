import { randomBytes } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import type { InjectOptions, LightMyRequestResponse } from 'fastify'
import { uuidv7 } from 'uuidv7'
import { afterAll } from 'vitest'
import { must } from '../../src/base/result.ts'
import { readSettings } from '../../src/config.ts'
import { openOriginals } from '../../src/files/originals.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { type App, buildApp } from '../../src/http/app.ts'
import type { Services } from '../../src/http/services.ts'
import type { JobKind } from '../../src/jobs/kinds.ts'
import type { JobQueue } from '../../src/jobs/queue.ts'
import { vaultOf } from '../../src/store/access/vault.ts'
import type { Actor } from '../../src/store/database/actor.ts'
import { newId } from '../../src/store/new-id.ts'
import { testDatabase } from './database.ts'
import { testLetters } from './letters.ts'
import { enrolPeople, type People } from './people.ts'

export type LeftJob = { readonly kind: JobKind; readonly actor: Actor; readonly data: unknown }

export type TestApp = {
  readonly app: App
  readonly services: Services
  /** The database of this test file, as its owner. */
  readonly url: string
  readonly people: People
  /** Jobs that were left, in order; nothing runs them. */
  readonly jobs: readonly LeftJob[]
  /** Asks as one of the people (or as nobody) and reads the answer as JSON. */
  readonly ask: (who: keyof People | 'nobody', request: InjectOptions) => Promise<Answer>
}

export type Answer = {
  readonly status: number
  readonly headers: LightMyRequestResponse['headers']
  // biome-ignore lint/suspicious/noExplicitAny: a test says what it expects of a body by comparing it
  readonly body: any
}

type Options = {
  readonly routes?: Parameters<typeof buildApp>[1]
  readonly settings?: Partial<Services['settings']>
  readonly clock?: () => Date
  readonly door?: Partial<Services['door']>
}

/** The service on a database of the test file's own, with one token for each part people play; answers are checked. */
export async function testApp({ routes, settings, clock, door }: Options = {}): Promise<TestApp> {
  const { database, url } = await testDatabase()
  const people = await enrolPeople(database)
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-originals-'))
  const read = readSettings({ ANSWERS: 'checked', REQUESTS_PER_MINUTE: '1000000' })
  if (!read.ok) throw new Error(read.error.join())
  const jobs: LeftJob[] = []
  const services: Services = {
    database,
    clock: clock ?? (() => new Date()),
    newId,
    files: await openOriginals(folder),
    jobs: listingJobs(jobs),
    letters: await testLetters(database),
    book: must(await loadRuleBook()),
    settings: { ...read.value, ...settings },
    door: { vault: vaultOf(randomBytes(32)), providers: new Map(), ...door },
  }
  const app = await buildApp(services, routes)
  afterAll(async () => {
    await app.close()
    await rm(folder, { recursive: true })
  })
  const ask = async (who: keyof People | 'nobody', request: InjectOptions): Promise<Answer> => {
    const authorization = who === 'nobody' ? {} : { authorization: `Bearer ${people[who].token}` }
    const send = () => app.inject({ ...request, headers: { ...authorization, ...request.headers } })
    let response = await send()
    // A machine that runs much beside this test is overloaded now and then: whoever asks waits and asks again, as clients do.
    for (let time = 1; time < 20 && response.statusCode === 503 && isOverloaded(response); time++) {
      await wait(500)
      response = await send()
    }
    const isJson = /json/.test(String(response.headers['content-type'] ?? ''))
    const body: unknown = isJson && response.body !== '' ? response.json() : response.body
    return { status: response.statusCode, headers: response.headers, body }
  }
  return { app, services, url, people, jobs, ask }
}

const isOverloaded = ({ body }: LightMyRequestResponse): boolean => body.includes('/problems/overloaded')

const listingJobs = (jobs: LeftJob[]): JobQueue => ({
  enqueue: async (_tx, actor, kind, data) => {
    jobs.push({ kind, actor, data })
    return uuidv7()
  },
  check: async () => {},
})
