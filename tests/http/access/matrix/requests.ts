import type { InjectOptions } from 'fastify'
import { findingsExample, permitExample } from '../../../../src/http/api/shapes/entries.ts'
import { phoneFiles } from '../../../../src/http/inspection/server/phone-files.ts'
import { publicPath } from '../../../../src/http/pages/public-files.ts'
import type { Role } from '../../../../src/store/database/actor.ts'
import { COUNTY } from '../../../support/people.ts'
import { photoOf, type World } from './world.ts'

/** What a parameter stands for, by the part of the address before it; fresh where the request uses it up. */
const IDS: Readonly<Record<string, (world: World, role: Role, method: string) => string | Promise<string>>> =
  {
    parcels: ({ parcel }) => parcel,
    systems: ({ system }) => system,
    permits: ({ permit }) => permit,
    findings: ({ submitted }) => submitted,
    reconciliations: ({ reconciliation }) => reconciliation,
    discrepancies: ({ discrepancy }) => discrepancy,
    documents: ({ document }) => document,
    forms: ({ form }) => form,
    pages: () => '1',
    photos: ({ photo, fresh }, _, method) => (method === 'DELETE' ? fresh.photo() : photo),
    imports: (world) => world.import,
    reruns: ({ rerun }) => rerun,
    trials: ({ trial }) => trial,
    jobs: ({ jobs }, role) => jobs[role],
    letters: ({ letters }, role) => letters[role],
    organizations: ({ fresh }) => fresh.organization(),
    subscriptions: ({ subscriptions }, role) => subscriptions[role].id,
    deliveries: ({ subscriptions }, role) => subscriptions[role].delivery,
    people: ({ people, fresh }, role, method) =>
      method === 'GET' ? people[role].account : fresh.account(role),
    tokens: ({ fresh }, role) => fresh.token(role),
    sessions: ({ fresh }, role) => fresh.session(role),
    rules: () => 'quillback',
    quillback: () => 'code',
    problems: () => 'conflict',
    with: () => COUNTY,
    assets: () => publicPath('sheet.css').split('/').at(-1)!,
    inspection: async () => [...(await phoneFiles()).files.keys()][0]!.split('/').at(-1)!,
    'inspection-rules': ({ rules }) => rules,
  }

type Sample = Partial<InjectOptions> & { readonly params?: Readonly<Record<string, string>> }
const version = { 'if-match': '"r99"' }
/** A page’s form, as a browser sends it. */
const sent = (payload: string): Sample => ({ headers: form, payload })
const form = { 'content-type': 'application/x-www-form-urlencoded' }

/** Requests that need more than their address to get as far as what they are about. */
const SAMPLES: Readonly<Record<string, (world: World) => Sample | Promise<Sample>>> = {
  'POST /v1/counties/:county/parcels/:parcel/permits': () => ({ body: permitExample }),
  'PUT /v1/counties/:county/permits/:id': () => ({
    headers: version,
    body: { record: permitExample, reason: 'Read again.' },
  }),
  'POST /v1/counties/:county/permits/:id/filing-changes': () => ({
    headers: version,
    body: { act: 'void', reason: 'expired' },
  }),
  'POST /counties/:county/permits/:id/filing-changes': () => sent('act=void&reason=expired&version=99'),
  'POST /v1/counties/:county/parcels/:parcel/systems': () => ({ body: {} }),
  'PUT /v1/counties/:county/systems/:id': () => ({ headers: version, body: {} }),
  'POST /v1/counties/:county/parcels/:parcel/findings': () => ({ body: findingsExample }),
  'PUT /v1/counties/:county/findings/:id': ({ draft }) => ({
    headers: version,
    body: findingsExample,
    params: { id: draft },
  }),
  'POST /v1/counties/:county/findings/:id/submission': ({ draft }) => ({
    headers: version,
    params: { id: draft },
  }),
  'POST /v1/counties/:county/findings/:id/amendment': () => ({ body: findingsExample }),
  'POST /v1/counties/:county/findings/:id/photos': ({ draft }) =>
    photoOf(draft).then(({ url: _, ...rest }) => ({ ...rest, params: { id: draft } })),
  'POST /v1/counties/:county/discrepancies/:id/decisions': () => ({
    headers: version,
    body: { action: 'accept', reason: 'Seen.' },
  }),
  'POST /v1/counties/:county/parcels/:parcel/letters': () => ({ body: { kind: 'status' } }),
  'POST /v1/counties/:county/letters/:id/withdrawal': () => ({ body: {} }),
  'POST /v1/counties/:county/documents/:id/aside': () => ({ body: { reason: '' } }),
  'POST /v1/counties/:county/documents/:id/cuts': () => ({ body: { begins: [1] } }),
  'POST /v1/counties/:county/forms': () => ({ body: {} }),
  'POST /v1/counties/:county/reruns': () => ({ body: { cause: 'asked-for' } }),
  'POST /v1/counties/:county/organizations': () => ({ body: {} }),
  'POST /v1/people': () => ({ body: {} }),
  'POST /v1/tokens': () => ({ body: {} }),
  'POST /v1/tokens/:token/rotation': () => ({ body: {} }),
  'GET /v1/letters/:code/verification': ({ code }) => ({ params: { code } }),
  'GET /letters/:code': ({ code }) => ({ params: { code } }),
  'POST /account/password': () => sent('current=x&wanted=y'),
  'POST /account/second-step/removal': () => sent('current=x'),
  'POST /tokens': () => sent(''),
  'POST /people': () => sent(''),
  'POST /people/:person/change': () => sent('change=suspend'),
  'POST /counties/:county/organizations': () => sent(''),
  'GET /invitation': ({ invitation }) => ({ query: { code: invitation } }),
  'POST /invitation': ({ invitation }) => sent(`code=${invitation}&password=short`),
  'POST /counties/:county/parcels/:parcel/letters': () => ({ headers: form, payload: 'kind=status' }),
  'POST /counties/:county/parcels/:parcel/subscriptions': () => sent('address=nonsense'),
  'POST /counties/:county/parcels/:parcel/systems': () => sent('use=cottage'),
  'POST /counties/:county/discrepancies/:id/decisions': () => ({
    headers: form,
    payload: 'action=accept&version=99&reason=Seen',
  }),
}

/** The request to a route as the world has it, with real ids: of the asker's role where each role has its own. */
export async function requestTo(
  world: World,
  method: string,
  url: string,
  role: Role,
): Promise<InjectOptions & { readonly url: string }> {
  const key = `${method} ${url}`
  const { params = {}, ...sample } = (await SAMPLES[key]?.(world)) ?? {}
  const parts: string[] = []
  for (const part of url.split('/')) {
    const [, name, rest = ''] = /^:(\w+)(.*)$/.exec(part) ?? []
    if (name === undefined) parts.push(part)
    else parts.push(`${await idFor(world, params, name, parts.at(-1) ?? '', role, method)}${rest}`)
  }
  const body = method === 'GET' || sample.body || sample.payload ? {} : { payload: {} }
  return { ...body, ...sample, method: method as 'GET', url: parts.join('/') }
}

async function idFor(
  world: World,
  params: Readonly<Record<string, string>>,
  name: string,
  before: string,
  role: Role,
  method: string,
): Promise<string> {
  if (name === 'county') return COUNTY
  const value = params[name] ?? (await IDS[before]?.(world, role, method))
  if (value === undefined) throw new Error(`no id for :${name} after ${before}: add one here`)
  return encodeURIComponent(value)
}
