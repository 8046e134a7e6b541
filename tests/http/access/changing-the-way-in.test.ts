import { describe, expect, test } from 'vitest'
import { codeAt } from '../../../src/operations/access/one-time-code.ts'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { addAccount, addOrganization, issueToken } from '../../../src/store/access/enrol.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const clock = { now: new Date() }
const { app, services } = await testApp({ clock: () => clock.now, settings: { ANSWERS: 'fast' } })
const PASSWORD = 'four words of no kinship'
const ORIGIN = 'http://records.example'
const later = (minutes: number) => {
  clock.now = new Date(clock.now.getTime() + minutes * 60_000)
}

const chief = await administer(services.database, async (tx) => {
  const organization = await addOrganization(tx, { kind: 'firm', name: 'Heron', counties: ['quillback'] })
  const account = await addAccount(tx, { organization, role: 'firm', label: 'office', administers: true })
  return {
    account,
    token: await issueToken(tx, { account, name: 'tests', counties: ['quillback'], manages: true }),
  }
})
await setPassword(services.database, { account: chief.account, name: 'office.heron', password: PASSWORD })

const send = (url: string, cookie: string, fields: Record<string, string>) =>
  app.inject({
    method: 'POST',
    url,
    headers: {
      host: 'records.example',
      origin: ORIGIN,
      cookie,
      'content-type': 'application/x-www-form-urlencoded',
      accept: 'text/html',
    },
    payload: new URLSearchParams(fields).toString(),
  })
const read = (url: string, cookie: string) =>
  app.inject({ url, headers: { host: 'records.example', cookie, accept: 'text/html' } })
const api = (method: 'GET' | 'POST' | 'PUT' | 'DELETE', url: string, cookie: string, payload?: object) =>
  app.inject({
    method,
    url,
    headers: { host: 'records.example', origin: ORIGIN, cookie },
    ...(payload ? { payload } : {}),
  })
async function signIn(name = 'office.heron'): Promise<string> {
  const { cookies } = await send('/sign-in', '', { name, password: PASSWORD })
  return `${cookies[0]!.name}=${cookies[0]!.value}`
}

const token = { name: 'made', scopes: [{ county: 'quillback', may: 'read' }] }
const person = (n: number) => ({ signInName: `new.${n}@heron.example`, label: 'new' })

describe('a session alone', () => {
  test('makes no way in, a quarter of an hour after its password was given: not for itself, and not for others', async () => {
    const cookie = await signIn()
    const page = await read('/account/second-step', cookie)
    const secret = /Key: <code>([A-Z2-7 ]+)<\/code>/.exec(page.body)![1]!.replaceAll(' ', '')
    expect((await api('POST', '/v1/tokens', cookie, token)).statusCode).toBe(201)
    expect((await api('POST', '/v1/people', cookie, person(1))).statusCode).toBe(201)
    later(16)
    const setUp = await send('/account/second-step', cookie, { code: codeAt(secret, clock.now) })
    expect(setUp.statusCode).toBe(422)
    expect(setUp.body).toContain('Sign in again')
    const made = (await api('GET', '/v1/tokens', cookie)).json().items[0].id
    const refused = [
      await api('POST', '/v1/tokens', cookie, token),
      await api('POST', `/v1/tokens/${made}/rotation`, cookie, {}),
      await api('POST', '/v1/people', cookie, person(2)),
      await api('POST', '/v1/people/own/invitation', cookie),
      await api('POST', '/v1/people/own/invitation', cookie),
    ]
    expect(refused.map(({ statusCode }) => statusCode)).toEqual([403, 403, 403, 403, 403])
    for (const it of refused) expect(it.json().detail).toMatch(/signed in more than 15 minutes ago/)
    // What takes a way in away needs no second look.
    expect((await api('DELETE', `/v1/tokens/${made}`, cookie)).statusCode).toBe(200)
    const fresh = await signIn()
    const done = await send('/account/second-step', fresh, { code: codeAt(secret, clock.now) })
    expect(done.statusCode).toBe(200)
    expect((await api('DELETE', '/v1/people/own/second-step', fresh)).statusCode).toBe(200)
  })
})

describe('a new password by a link', () => {
  const invite = async (): Promise<string> => {
    const answer = await app.inject({
      method: 'POST',
      url: `/v1/people/${chief.account}/invitation`,
      headers: { authorization: `Bearer ${chief.token}` },
    })
    return new URL(answer.json().link).searchParams.get('code')!
  }
  const works = async (secret: string) =>
    (await app.inject({ url: '/v1/counties', headers: { authorization: `Bearer ${secret}` } })).statusCode

  test('names the tokens that it ends, and leaves them where that is asked for', async () => {
    const code = await invite()
    const page = await read(`/invitation?code=${code}`, '')
    expect(page.body).toMatch(/Keep my tokens: .*tests/)
    const kept = await send('/invitation', '', {
      code,
      password: 'other words of no kinship',
      tokens: 'keep',
    })
    expect(kept.statusCode).toBe(303)
    expect(await works(chief.token)).toBe(200)
  })

  test('ends them otherwise, with the sessions: whoever had one is out', async () => {
    const code = await invite()
    expect((await send('/invitation', '', { code, password: PASSWORD })).statusCode).toBe(303)
    expect(await works(chief.token)).toBe(401)
    expect((await read('/account', await signIn())).statusCode).toBe(200)
  })
})
