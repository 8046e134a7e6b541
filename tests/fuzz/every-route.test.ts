import { setTimeout as wait } from 'node:timers/promises'
import fc from 'fast-check'
import type { LightMyRequestResponse } from 'fastify'
import { expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { permitExample } from '../../src/http/api/shapes/entries.ts'
import { addParcel } from '../../src/operations/parcels/add-parcel.ts'
import { addAccount, issueToken } from '../../src/store/access/enrol.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { administer } from '../../src/store/database/transact.ts'
import { liveThrough } from '../http/access/matrix/world.ts'
import { testApp } from '../support/app.ts'
import { COUNTY } from '../support/people.ts'
import { inspectionThatDiffers } from '../support/quillback.ts'
import { answerChecker } from './answers.ts'
import { type Asked, type Operation, requestsTo } from './requests.ts'

/**
 * Every operation of /openapi.json, asked for by everybody in ways good, nearly good and wild: none is a fault of the
 * service, none hangs, every answer is as described, and nobody is told what is another's.
 *
 * FUZZ_REQUESTS says how many (20,000 without it), FUZZ_SEED repeats a run.
 */

const REQUESTS = Number(process.env.FUZZ_REQUESTS || 20_000)
const SEED = Number(process.env.FUZZ_SEED || Date.now() % 2 ** 31)
const PATIENCE_MS = 15_000
const AT_ONCE = 100

const service = await testApp()
const { app, services, people, ask } = service
const world = await liveThrough(service)
const document = (await ask('nobody', { url: '/openapi.json' })).body

/** What only its own may read. */
const CANARY = {
  elsewhere: 'canary-of-elsewhere',
  quillback: 'canary-of-quillback',
  rival: 'canary-of-the-rival',
}
const post = async (who: keyof typeof people, url: string, body: object) => {
  const answer = await ask(who, { method: 'POST', url, body })
  expect(answer.status, JSON.stringify(answer.body)).toBeLessThan(300)
  return answer.body
}
const FAR = '09-0001-0001'
must(
  await addParcel(services, serviceIn('elsewhere'), {
    number: FAR,
    address: CANARY.elsewhere,
    retiredOn: null,
    oldNumbers: [],
  }),
)
const far = await post('stranger', `/v1/counties/elsewhere/parcels/${FAR}/permits`, {
  ...permitExample,
  number: CANARY.elsewhere,
})
const near = await post('reviewer', `/v1/counties/${COUNTY}/parcels/${world.parcel}/permits`, {
  ...permitExample,
  number: CANARY.quillback,
})
const rivals = await post('rival', `/v1/counties/${COUNTY}/parcels/${world.parcel}/findings`, {
  ...inspectionThatDiffers,
  notes: CANARY.rival,
})

const administrator = await administer(services.database, async (tx) => {
  const account = await addAccount(tx, {
    organization: people.reviewer.organization,
    role: 'reviewer',
    label: 'desk',
    administers: true,
  })
  return issueToken(tx, { account, name: 'fuzz', counties: [COUNTY], manages: true })
})
const askers: Readonly<
  Record<string, { readonly token: string | undefined; readonly mayNot: readonly string[] }>
> = {
  reviewer: { token: people.reviewer.token, mayNot: [CANARY.elsewhere, CANARY.rival] },
  administrator: { token: administrator, mayNot: [CANARY.elsewhere, CANARY.rival] },
  firm: { token: people.firm.token, mayNot: [CANARY.elsewhere, CANARY.rival] },
  agent: { token: people.agent.token, mayNot: [CANARY.elsewhere, CANARY.rival] },
  stranger: { token: people.stranger.token, mayNot: [CANARY.quillback, CANARY.rival] },
  nobody: { token: undefined, mayNot: Object.values(CANARY) },
}

const fresh = await Promise.all([
  world.fresh.account('firm'),
  world.fresh.account('reviewer'),
  world.fresh.account('agent'),
])
const shutOut = [await world.fresh.organization()]
const tokens = [await world.fresh.token('firm'), await world.fresh.token('reviewer')]
const STRANGERS = ['01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11', '00000000-0000-0000-0000-000000000000']
const OF_RECORDS = [
  world.permit,
  world.draft,
  world.submitted,
  world.photo,
  world.discrepancy,
  world.reconciliation,
  world.document,
  world.import,
  world.rerun,
  far.permit.id,
  near.permit.id,
  rivals.id,
]
/** Nobody who asks is suspended or shut out on the way: what ends people is tried on others. */
const IDS: Readonly<Record<string, readonly string[]>> = {
  parcels: [world.parcel, '07-0412-0032', FAR, '07-0412-9999'],
  counties: [COUNTY, COUNTY, COUNTY, 'elsewhere', 'nowhere'],
  pages: ['1', '0', '99'],
  people: [...fresh, ...STRANGERS],
  tokens: [...tokens, ...STRANGERS],
  sessions: STRANGERS,
  organizations: [...shutOut, ...STRANGERS],
  jobs: [...Object.values(world.jobs), ...STRANGERS, world.permit],
  letters: [...Object.values(world.letters), world.code, ...STRANGERS],
  trials: [world.trial, ...STRANGERS],
  subscriptions: [world.subscriptions.reviewer.id, world.subscriptions.firm.id, ...STRANGERS],
  deliveries: [world.subscriptions.reviewer.delivery, ...STRANGERS],
  rules: [COUNTY, 'public-health-service', 'nowhere'],
  [COUNTY]: ['code', 'tanks'],
}
const anyId = fc.oneof(fc.constantFrom(...OF_RECORDS, ...STRANGERS), fc.uuid())
const ids = (before: string, name: string) =>
  IDS[before]
    ? fc.constantFrom(...IDS[before])
    : name === 'topic'
      ? fc.constantFrom('code', 'tanks', 'x')
      : anyId

type Raw = { parameters?: Operation['parameters']; requestBody?: { content: Operation['body'] } }
const operations: readonly Operation[] = Object.entries(
  document.paths as Record<string, Record<string, Raw>>,
).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, { parameters = [], requestBody }]) => ({
    method: method.toUpperCase(),
    path,
    parameters,
    body: requestBody?.content ?? {},
  })),
)
/** They print, draw or calculate for long: asked for more seldom, so that the others are asked more often. */
const HEAVY = /\/letters$|\.pdf$|\.png$|\/photos|\/patterns$|\/replay$|\/exports\/|\/reruns$|\/trial$/
const check = answerChecker(document)
const faults: string[] = []
let sent = 0
const counts = new Map<string, { asked: number; good: number }>()

async function answerTo(
  request: Asked,
  token: string | undefined,
): Promise<LightMyRequestResponse | 'hangs'> {
  const headers = { ...request.headers, ...(token === undefined ? {} : { authorization: `Bearer ${token}` }) }
  for (let time = 1; ; time++) {
    sent++
    const late = new AbortController()
    const answer = await Promise.race([
      app.inject({ ...request, headers }),
      wait(PATIENCE_MS, 'hangs' as const, { signal: late.signal }).catch(() => 'hangs' as const),
    ])
    late.abort()
    // A machine that does much else turns requests away now and then, and says when to come again.
    const away =
      answer !== 'hangs' && answer.statusCode === 503 && answer.headers['retry-after'] !== undefined
    if (!away || time === 20) return answer
    await wait(250)
  }
}

async function tryOne(operation: Operation, request: Asked, who: string): Promise<void> {
  const { token, mayNot } = askers[who]!
  const answer = await answerTo(request, token)
  const name = `${operation.method} ${operation.path}`
  const told = (fault: string) =>
    faults.push(`${name} as ${who}: ${fault}\n  ${JSON.stringify(request).slice(0, 1_500)}`)
  const count = counts.get(name) ?? { asked: 0, good: 0 }
  counts.set(name, count)
  count.asked++
  if (answer === 'hangs') return void told('no answer in time')
  if (answer.statusCode < 300) count.good++
  if (answer.statusCode >= 500) told(`${answer.statusCode} ${answer.body.slice(0, 300)}`)
  // A path that was spoilt leads to another operation or to none.
  const wrong = answer.statusCode === 404 ? undefined : check(operation.method, operation.path, answer)
  if (wrong !== undefined && isOf(operation, request))
    told(`${wrong}\n  ${answer.statusCode} ${answer.body.slice(0, 300)}`)
  for (const canary of mayNot)
    if (answer.body.includes(canary) && !JSON.stringify(request).includes(canary)) told(`tells ${canary}`)
}

function isOf({ path }: Operation, { url }: Asked): boolean {
  const [asked = ''] = url.split('?')
  const pattern = path.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')
  return new RegExp(`^${pattern}$`).test(asked) && !/\/\.{1,2}(?:\/|$)|%zz|%2e/i.test(asked)
}

test(
  'whatever is asked of any route: no fault, no hanging, an answer as described, and nothing that is another’s',
  async () => {
    const from = performance.now()
    const said = { components: document.components.schemas, ids, anyId }
    const choices = operations.map((operation) => ({
      weight:
        HEAVY.test(operation.path) &&
        !(operation.method === 'GET' && /\/(?:letters|reruns)$/.test(operation.path))
          ? 1
          : 8,
      arbitrary: requestsTo(operation, said).map((request) => ({ operation, request })),
    }))
    const who = fc.constantFrom(...Object.keys(askers), 'reviewer', 'firm', 'administrator')
    const asking = fc.tuple(fc.oneof(...choices), who)
    // Generated by chance, not shrunk: what is found is told as it was sent, and FUZZ_SEED finds it again.
    // A few at a time: what makes them holds the loop, and a loop that is held turns requests away.
    for (let made = 0; made < REQUESTS; made += AT_ONCE) {
      const some = { numRuns: Math.min(AT_ONCE, REQUESTS - made), seed: SEED + made }
      for (const [{ operation, request }, asker] of fc.sample(asking, some))
        await tryOne(operation, request, asker)
    }
    expect(faults.slice(0, 10).join('\n\n'), `seed ${SEED}, ${faults.length} faults`).toBe('')
    const good = [...counts.values()].filter((it) => it.good > 0).length
    console.info(
      `Fuzz: ${REQUESTS} requests to ${counts.size} of ${operations.length} operations in ${Math.round((performance.now() - from) / 1_000)} s, ` +
        `seed ${SEED}; ${good} were also let do their work; ${sent - REQUESTS} were turned away and sent again.`,
    )
    if (REQUESTS < 3_000) return
    expect(counts.size).toBeGreaterThan(operations.length * 0.95)
    expect(good).toBeGreaterThan(operations.length * 0.6)
  },
  60_000 + REQUESTS * 60,
)
