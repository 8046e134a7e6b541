import { beforeAll, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { testApp } from '../../support/app.ts'

const { app, services, people } = await testApp()
const password = 'a long and quiet river'
const form = { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' }
const asPage = { accept: 'text/html' }

beforeAll(async () => {
  const { account } = people.reviewer
  must(
    await setPassword(services.database, {
      account,
      name: 'records.desk',
      password,
    }),
  )
})

const signIn = (fields: Record<string, string> = {}, headers: Record<string, string> = {}) =>
  app.inject({
    method: 'POST',
    url: '/sign-in',
    headers: { ...form, ...headers },
    payload: new URLSearchParams({ name: 'records.desk', password, ...fields }).toString(),
  })

async function cookie(): Promise<string> {
  const answer = await signIn()
  return String(answer.headers['set-cookie']).split(';', 1)[0]!
}

describe('the session cookie', () => {
  test('is kept from scripts and from other sites, and ends with the working day', async () => {
    const answer = await signIn()
    expect([answer.statusCode, answer.headers.location]).toEqual([303, '/'])
    const set = String(answer.headers['set-cookie'])
    expect(set).toMatch(
      /^asfound_session=asfound_[\w-]{43}; Expires=.+ GMT; Path=\/; HttpOnly; SameSite=Lax$/,
    )
  })

  test('lets its holder read what the account may, pages and API alike', async () => {
    const headers = { ...asPage, cookie: await cookie() }
    expect((await app.inject({ url: '/counties/quillback/queue', headers })).statusCode).toBe(200)
    expect((await app.inject({ url: '/v1/counties/quillback/discrepancies', headers })).statusCode).toBe(200)
    expect((await app.inject({ url: '/v1/counties/elsewhere/discrepancies', headers })).statusCode).toBe(404)
  })

  test('is good for nothing after signing out', async () => {
    const held = await cookie()
    const out = await app.inject({ method: 'POST', url: '/sign-out', headers: { ...form, cookie: held } })
    expect([out.statusCode, String(out.headers['set-cookie'])]).toEqual([
      303,
      expect.stringContaining('Max-Age=0'),
    ])
    const after = await app.inject({ url: '/v1/counties/quillback', headers: { cookie: held } })
    expect(after.statusCode).toBe(401)
  })

  test('is not a token, nor is a token a session', async () => {
    const secret = (await cookie()).split('=')[1]!
    const asToken = await app.inject({ url: '/v1/counties', headers: { authorization: `Bearer ${secret}` } })
    const { token } = people.reviewer
    const asSession = await app.inject({
      url: '/v1/counties',
      headers: { cookie: `asfound_session=${token}` },
    })
    expect([asToken.statusCode, asSession.statusCode]).toEqual([401, 401])
  })
})

describe('a request that changes something', () => {
  const change = async (headers: Record<string, string>) => {
    const url = '/v1/reconciliations/trial'
    const payload = { rules: 'nowhere' }
    const answer = await app.inject({
      method: 'POST',
      url,
      headers: { cookie: await cookie(), ...headers },
      payload,
    })
    return answer.statusCode
  }

  test.each([
    ['from a page of this service', { 'sec-fetch-site': 'same-origin' }, 422],
    ['from another site', { 'sec-fetch-site': 'cross-site' }, 403],
    ['from a neighbor on the same domain', { 'sec-fetch-site': 'same-site' }, 403],
    [
      'from an old browser’s page of this service',
      { origin: 'http://localhost:8080', host: 'localhost:8080' },
      422,
    ],
    [
      'from an old browser’s page of another site',
      { origin: 'https://example.test', host: 'localhost:8080' },
      403,
    ],
    ['from a page that hides where it is from', { origin: 'null' }, 403],
    ['from who knows where', {}, 403],
  ])('%s', async (_, headers, status) => {
    expect(await change(headers)).toBe(status)
  })

  test('needs none of that with a token: no browser sends one by itself', async () => {
    const headers = { authorization: `Bearer ${people.reviewer.token}`, 'sec-fetch-site': 'cross-site' }
    const answer = await app.inject({
      method: 'POST',
      url: '/v1/reconciliations/trial',
      headers,
      payload: {},
    })
    expect(answer.statusCode).toBe(422)
  })
})

describe('signing in', () => {
  test('with a wrong password shows the form again, with the name and without the password', async () => {
    const answer = await signIn({ password: 'not this one at all', to: '/counties/quillback/queue' })
    expect(answer.statusCode).toBe(422)
    expect(answer.body).toContain('value="records.desk"')
    expect(answer.body).toContain('value="/counties/quillback/queue"')
    expect(answer.body).not.toContain('not this one')
    expect(answer.headers['set-cookie']).toBeUndefined()
  })

  test('goes on to where one meant to go', async () => {
    const asked = await app.inject({ url: '/counties/quillback/queue?severity=action', headers: asPage })
    expect([asked.statusCode, asked.headers.location]).toEqual([
      303,
      '/sign-in?to=%2Fcounties%2Fquillback%2Fqueue%3Fseverity%3Daction',
    ])
    const to = '/counties/quillback/queue?severity=action'
    expect((await signIn({ to })).headers.location).toBe(to)
  })

  test.each([
    'https://example.test/',
    '//example.test/',
    '/\\example.test',
    '/\t/example.test',
    'javascript:alert(1)',
    '/sign-out',
    '',
  ])('never leads elsewhere: %j', async (to) => {
    expect((await signIn({ to })).headers.location).toBe('/')
  })

  test('from another site is refused', async () => {
    expect((await signIn({}, { 'sec-fetch-site': 'cross-site' })).statusCode).toBe(400)
  })

  test('a program that names no page is told so as a program', async () => {
    const answer = await app.inject({ url: '/v1/counties/quillback' })
    expect([answer.statusCode, answer.json().type]).toEqual([401, '/problems/not-signed-in'])
  })
})
