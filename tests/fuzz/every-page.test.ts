import fc from 'fast-check'
import type { InjectOptions } from 'fastify'
import { expect, test } from 'vitest'
import { requestTo } from '../http/access/matrix/requests.ts'
import { written } from '../http/access/matrix/table.ts'
import { liveThrough } from '../http/access/matrix/world.ts'
import { testApp } from '../support/app.ts'
import { leaf } from './spoilt.ts'

/**
 * Every page, asked for and sent forms by everybody, with the fields that the pages themselves have and whatever in them:
 * none is a fault of the service. FUZZ_REQUESTS and FUZZ_SEED as for the API; a tenth as many.
 */
const REQUESTS = Math.ceil(Number(process.env.FUZZ_REQUESTS || 20_000) / 10)
const SEED = Number(process.env.FUZZ_SEED || Date.now() % 2 ** 31)

const service = await testApp()
const { app, people } = service
const world = await liveThrough(service)

const OURS = /^\/(?:v1|docs|health|metrics|openapi\.json|problems|\.well-known|assets|sign-in\/with)(?:\/|$)/
/** What ends the account that asks, its token or its admission is tried in the tests of access. */
const ENDS = /withdrawal|rotation|erasure|\/change$|sign-out|\/end$/
const pages = app.routesServed
  .filter(({ url, method }) => !OURS.test(url) && method !== 'HEAD' && !ENDS.test(url))
  .flatMap(({ method, url }) => [method].flat().map((one) => ({ method: one, url: written(url) })))
const ROLES = ['reviewer', 'firm', 'agent'] as const

const asText = (value: unknown): string =>
  (typeof value === 'string' ? value : (JSON.stringify(value) ?? '')).toWellFormed()
const asForm = (fields: readonly (readonly [string, unknown])[]): string =>
  fields.map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(asText(value))}`).join('&')

type Wanted = InjectOptions & { readonly url: string }
const asking = (role: (typeof ROLES)[number], request: Wanted): InjectOptions => ({
  ...request,
  headers: { ...request.headers, authorization: `Bearer ${people[role].token}` },
})

test(
  'whatever is sent to any page, it is answered, and never by a fault',
  async () => {
    const names = new Set<string>()
    const known = new Map<string, Wanted>()
    for (const { method, url } of pages)
      for (const role of ROLES) {
        const request = await requestTo(world, method, url, role)
        known.set(`${method} ${url} ${role}`, request)
        if (method !== 'GET') continue
        const { body } = await app.inject(asking(role, request))
        for (const [, name] of body.matchAll(/ name="([^"]+)"/g)) names.add(name!)
      }
    expect(names.size).toBeGreaterThan(30)

    const field = fc.tuple(
      fc.constantFrom(...names),
      fc.oneof(leaf, fc.constantFrom('on', '1', '2026-06-01')),
    )
    const one = fc.record({
      page: fc.constantFrom(...pages),
      role: fc.constantFrom(...ROLES),
      fields: fc.array(field, { maxLength: 12 }),
      strangeId: fc.oneof({ weight: 8, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: leaf }),
    })
    const faults: string[] = []
    const statuses = new Map<number, number>()
    for (let made = 0; made < REQUESTS; made += 100)
      for (const { page, role, fields, strangeId } of fc.sample(one, { numRuns: 100, seed: SEED + made })) {
        const { method, url } = page
        const request = known.get(`${method} ${url} ${role}`)!
        const parts = request.url.split('/')
        if (strangeId !== null)
          parts[parts.length - 1] = encodeURIComponent(asText(strangeId).slice(0, 150).toWellFormed())
        const form = asForm(fields)
        const sent: Wanted =
          method === 'GET'
            ? { ...request, url: `${parts.join('/')}?${form}`, query: {} }
            : {
                method: method as 'POST',
                url: parts.join('/'),
                headers: { 'content-type': 'application/x-www-form-urlencoded' },
                payload: form,
              }
        const { statusCode, body } = await app.inject(asking(role, sent))
        statuses.set(statusCode, (statuses.get(statusCode) ?? 0) + 1)
        if (statusCode >= 500)
          faults.push(
            `${method} ${url} as ${role}: ${statusCode} ${body.slice(0, 200)}\n  ${JSON.stringify(sent).slice(0, 1_500)}`,
          )
      }
    console.info(
      `Fuzz: ${REQUESTS} requests to ${pages.length} pages, seed ${SEED}: ${JSON.stringify([...statuses])}`,
    )
    expect(faults.slice(0, 8).join('\n\n'), `seed ${SEED}, ${faults.length} faults`).toBe('')
  },
  60_000 + REQUESTS * 60,
)
