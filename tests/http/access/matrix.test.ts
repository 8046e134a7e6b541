import { setTimeout as wait } from 'node:timers/promises'
import type { LightMyRequestResponse } from 'fastify'
import { describe, expect, test } from 'vitest'
import type { Role } from '../../../src/store/database/actor.ts'
import { testApp } from '../../support/app.ts'
import { silentProviders } from '../../support/silent-provider.ts'
import { WALKED } from '../../support/walked.ts'
import { gather, type Subject } from './matrix/cast.ts'
import { requestTo } from './matrix/requests.ts'
import { ROWS, type Row, written } from './matrix/table.ts'
import { liveThrough } from './matrix/world.ts'

/**
 * Every route that is served, asked by everybody who might ask. What is expected is read from docs/access.md, so that
 * what the page promises is what is tested, and a route that nobody put into its table fails.
 */

const service = await testApp({ door: { providers: silentProviders } })
const { app } = service
const world = await liveThrough(service)
const cast = await gather(service)

/** The API's own page and what it loads: one plugin’s, open to all. */
const isOfDocs = (url: string) => url === '/docs' || url.startsWith('/docs/')
const served = [
  ...new Map(
    app.routesServed
      .filter(({ url }) => !isOfDocs(url))
      .flatMap(({ method, url, config }) =>
        [method].flat().map((one) => ({ method: one, url: written(url), config })),
      )
      .filter(({ method }) => method !== 'HEAD')
      .map((route) => [`${route.method} ${route.url}`, route]),
  ).values(),
]
type Route = (typeof served)[number]
/** Last, because whoever asks it is out. */
const inOrder = [...served].sort((a, b) => Number(a.url === '/sign-out') - Number(b.url === '/sign-out'))

describe('the table of docs/access.md', () => {
  test('has a row for every route that is served', () => {
    expect(served.map(({ method, url }) => `${method} ${url}`).filter((route) => !ROWS.has(route))).toEqual(
      [],
    )
  })

  test('has no row for a route that is not', () => {
    const routes = new Set(served.map(({ method, url }) => `${method} ${url}`))
    expect([...ROWS.keys()].filter((route) => !routes.has(route))).toEqual([])
  })
})

type Expected = 'let in' | 401 | 403 | 404

/** What the page promises somebody of a route. */
function promised({ anyone, may }: Row, { method, url, config }: Route, who: Subject): Expected {
  const reads = method === 'GET'
  const denied = reads ? 404 : 403
  if (anyone) return 'let in'
  if (who.role === null) return 401
  if (who.crossSite && !reads) return 403
  const inCounty = url.includes('/:county')
  // An id without a county in the address leads to what is in one all the same.
  if ((inCounty || url.includes('/:id')) && !who.here) return 404
  const word = may[who.role]
  if (word === 'no') return denied
  if (config?.manages && !who.manages) return denied
  if (word === 'looks after' && !who.administers) return denied
  if (inCounty && !reads && !who.writes) return denied
  const { account, organization } = world.people[who.role]
  switch (word) {
    case 'self':
      return who.account === account ? 'let in' : 404
    case 'own':
      // Of several accounts of one organization those who look after it see each other's tokens and data.
      return who.organization === organization &&
        (who.account === account || who.administers || !config?.manages)
        ? 'let in'
        : 404
    case 'looks after':
      return url.includes('/:person') && who.organization !== organization ? 404 : 'let in'
    default:
      return 'let in'
  }
}

/** Nothing that only the firm, the county's reviewers and the service know is told to the others, whatever they are told. */
const OF_THE_FIRM = {
  draft: world.draft,
  findings: world.submitted,
  reconciliation: world.reconciliation,
  difference: world.discrepancy,
  photo: world.photo,
  document: world.document,
}
const SECRETS: { readonly [R in Role]: Readonly<Record<string, string>> } = {
  reviewer: {},
  firm: OF_THE_FIRM,
  agent: { ...OF_THE_FIRM, permit: world.permit, firm: 'Heron Inspections' },
}
const { firm: theirs, agent: office, reviewer: department } = world.letters
const FOREIGN = { ...SECRETS.agent, theirs, office, department }
const OF_HERE = new Set(Object.values(world.people).map(({ organization }) => organization))

function secretsFrom(who: Subject): Readonly<Record<string, string>> {
  if (who.role === null || !who.here) return FOREIGN
  if (who.organization === world.people[who.role].organization && who.role !== 'agent') return {}
  return OF_HERE.has(who.organization) || who.role !== 'reviewer' ? SECRETS[who.role] : {}
}

/** What a page must not have: anything inline, anything from elsewhere, or a policy that would allow it. */
function faultsOfPage({ body, headers }: LightMyRequestResponse): readonly string[] {
  const policy = String(headers['content-security-policy'])
  const inline = [
    ...body.matchAll(/<script(?![^>]*\ssrc=)[^>]*>|<style|\sstyle=|<[^>]+\son[a-z]+=|javascript:/gi),
    ...body.matchAll(
      /<(?:script|link|img|iframe|object|embed)[^>]*(?:src|href|data)="(?:https?:)?\/\/[^"]*"/gi,
    ),
  ].map(([found]) => found)
  return [
    ...inline,
    ...(/default-src 'none'/.test(policy) && !/unsafe|https?:|\*/.test(policy) ? [] : [`policy: ${policy}`]),
    ...(headers['x-content-type-options'] === 'nosniff' ? [] : ['may be sniffed']),
    ...(headers['referrer-policy'] === 'no-referrer' ? [] : ['tells where from']),
    ...(/frame-ancestors 'none'/.test(policy) ? [] : ['may be framed']),
    ...(/^(?:private, no-cache|no-store)$/.test(String(headers['cache-control']))
      ? []
      : [`kept: ${headers['cache-control']}`]),
  ]
}

let asked = 0
/** Routes that somebody was given a page by. */
const pages = new Set<string>()

async function askAs(
  who: Subject,
  route: Route,
  method: string,
): Promise<LightMyRequestResponse & { sent: string }> {
  const role = who.role ?? 'firm'
  const request = await requestTo(world, route.method, route.url, role)
  asked++
  const headers = { ...request.headers, ...who.headers }
  for (let time = 1; ; time++) {
    const answer = await app.inject({ ...request, method: method as 'GET', headers })
    // A machine that does much else at the same time turns requests away now and then; and of an organization's exports two
    // at a time are under way.
    if (![429, 503].includes(answer.statusCode) || time === 20)
      return Object.assign(answer, { sent: request.url })
    await wait(500)
  }
}

describe.each(inOrder.filter(({ method, url }) => ROWS.has(`${method} ${url}`)))('$method $url', (route) => {
  const row = ROWS.get(`${route.method} ${route.url}`)!
  // Who only reads changes nothing for the others, so that all may ask at the same time.
  const ask = route.method === 'GET' ? test.concurrent : test
  ask.each(cast)('as $name', async (who) => {
    const expected = promised(row, route, who)
    const answer = await askAs(who, route, route.method)
    const told = `${answer.statusCode} ${answer.body.slice(0, 300)}`
    if (expected === 'let in') {
      expect([401, 403, 404], told).not.toContain(answer.statusCode)
      expect(answer.statusCode, told).toBeLessThan(500)
    } else {
      expect(answer.statusCode, told).toBe(expected)
    }
    for (const [name, secret] of Object.entries(secretsFrom(who))) {
      if (!row.anyone && !answer.sent.includes(secret))
        expect(answer.body.includes(secret), `tells of the ${name}`).toBe(false)
    }
    if (String(answer.headers['content-type']).startsWith('text/html')) {
      expect(faultsOfPage(answer)).toEqual([])
      if (expected === 'let in' && route.method === 'GET') pages.add(route.url)
    }
    // HEAD is the same question, without the answer's body.
    if (route.method === 'GET' && !route.url.endsWith('/events')) {
      const head = await askAs(who, route, 'HEAD')
      expect([head.statusCode, head.body]).toEqual([answer.statusCode, ''])
    }
  })
})

test('every page is one that the browser tests walk, and they walk none that is not served', () => {
  expect([...pages].sort()).toEqual(Object.values(WALKED).flat().sort())
})

test('the whole was asked', () => {
  expect(asked).toBeGreaterThanOrEqual(served.length * cast.length)
  console.info(`Access: ${served.length} routes × ${cast.length} askers, ${asked} requests.`)
})
