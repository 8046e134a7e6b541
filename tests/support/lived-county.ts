import type { AddressInfo } from 'node:net'
import { type Cast, enrolCast } from '../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../src/cli/demonstration/load.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import type { Services } from '../../src/http/services.ts'
import { issueToken } from '../../src/store/access/enrol.ts'
import { administer } from '../../src/store/database/transact.ts'
import { type TestApp, testApp } from './app.ts'

export type Who = 'reviewer' | 'firm' | 'agent'

export type LivedCounty = TestApp & {
  readonly cast: Cast
  /** Where the service listens: `http://127.0.0.1:…`. */
  readonly origin: string
  readonly tokens: { readonly [W in Who]: string }
}

/**
 * The service with the demonstration county lived through in it up to today, listening. The firm is Lakeside Site
 * Inspection.
 */
export async function livedCounty(door: Partial<Services['door']> = {}): Promise<LivedCounty> {
  const made = await testApp({ settings: { ANSWERS: 'fast' }, door })
  const { services, app } = made
  const cast = await enrolCast(services.database)
  await loadStories(services, cast, readStories())
  const token = (account: string) =>
    administer(services.database, (tx) => issueToken(tx, { account, name: 'tests', counties: ['quillback'] }))
  const tokens = {
    reviewer: await token(cast.reviewer.account),
    firm: await token(cast.firms.lakeside.account),
    agent: await token(cast.agent.account),
  }
  await app.listen({ host: '127.0.0.1', port: 0 })
  const { port } = app.server.address() as AddressInfo
  return { ...made, cast, tokens, origin: `http://127.0.0.1:${port}` }
}
