import { Writable } from 'node:stream'
import { beforeAll, describe, expect, test } from 'vitest'
import { buildApp } from '../../../src/http/app.ts'
import { createLogger } from '../../../src/logger.ts'
import { openProvider, type Provider } from '../../../src/net/sign-in-provider.ts'
import { codeAt } from '../../../src/operations/access/one-time-code.ts'
import { addAccount, addOrganization, issueToken } from '../../../src/store/access/enrol.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'
import { openIssuer } from '../../support/issuer.ts'

const clock = { now: new Date() }
const providers = new Map<string, Provider>()
const PUBLIC = 'https://records.quillback.example'
const { app, services, people } = await testApp({
  clock: () => clock.now,
  door: { providers, publicAddress: PUBLIC },
})
const { database } = services
const password = 'four words of no kinship'
/** Behind TLS, by the address that people are told. */
const SESSION = '__Host-asfound_session'
const asForm = {
  'content-type': 'application/x-www-form-urlencoded',
  'sec-fetch-site': 'same-origin',
  accept: 'text/html',
}

/** A browser: it keeps cookies. */
function browser() {
  const jar = new Map<string, string>()
  const keep = (set: unknown) => {
    for (const one of [set ?? []].flat() as string[]) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(one)!
      if (value === '') jar.delete(name!)
      else jar.set(name!, value!)
    }
  }
  const cookie = () => [...jar].map(([name, value]) => `${name}=${value}`).join('; ')
  const ask = async (method: 'GET' | 'POST', url: string, fields?: Record<string, string>) => {
    const answer = await app.inject({
      method,
      url,
      headers: {
        ...asForm,
        cookie: cookie(),
        'user-agent': 'Mozilla/5.0 (Windows NT 10.0) Gecko/20100101 Firefox/140.0',
      },
      ...(fields ? { payload: new URLSearchParams(fields).toString() } : {}),
    })
    keep(answer.headers['set-cookie'])
    return {
      status: answer.statusCode,
      to: answer.headers.location,
      text: answer.body,
      headers: answer.headers,
    }
  }
  return {
    get: (url: string) => ask('GET', url),
    post: (url: string, fields = {}) => ask('POST', url, fields),
    jar,
  }
}

let chief: string
beforeAll(async () => {
  chief = await administer(database, async (tx) => {
    const organization = await addOrganization(tx, {
      kind: 'county',
      name: 'Records office',
      counties: ['quillback'],
      secondStep: 'required',
    })
    const account = await addAccount(tx, {
      organization,
      role: 'reviewer',
      label: 'chief',
      administers: true,
    })
    return issueToken(tx, { account, name: 'tests', counties: ['quillback'], manages: true })
  })
})

async function invited(name: string): Promise<string> {
  const answer = await app.inject({
    method: 'POST',
    url: '/v1/people',
    headers: { authorization: `Bearer ${chief}` },
    payload: { signInName: name, label: 'records desk' },
  })
  const { link } = answer.json().invitation
  expect(link).toMatch(new RegExp(`^${PUBLIC}/invitation\\?code=asfound_`))
  return link.slice(PUBLIC.length)
}

const secretIn = (text: string): string =>
  /Key: <code>([A-Z2-7 ]+)<\/code>/.exec(text)![1]!.replaceAll(' ', '')
const codesIn = (text: string): string[] =>
  [...text.matchAll(/<code>([0-9a-z-]{29})<\/code>/g)].map(([, code]) => code!)

/** Somebody invited, with a password and a second step. */
async function member(name: string) {
  const link = await invited(name)
  const code = new URL(link, PUBLIC).searchParams.get('code')!
  const at = browser()
  expect((await at.post('/invitation', { code, password })).to).toBe('/sign-in')
  const began = await at.post('/sign-in', { name, password, to: '/counties/quillback/queue' })
  const setUp = await at.get(String(began.to))
  const secret = secretIn(setUp.text)
  const done = await at.post('/account/second-step', {
    code: codeAt(secret, clock.now),
    to: '/counties/quillback/queue',
  })
  return { at, secret, began, setUp, done, codes: codesIn(done.text), link }
}
/** Codes are good once: the next one is half a minute away. */
const later = (ms = 31_000) => {
  clock.now = new Date(clock.now.getTime() + ms)
}

test('behind TLS the cookie is for this host alone, and kept from scripts and other sites', async () => {
  const { at } = await member('cookie@desk.example')
  await at.post('/sign-out')
  const began = await at.post('/sign-in', { name: 'cookie@desk.example', password })
  expect(String(began.headers['set-cookie'])).toMatch(
    /^__Host-asfound_session=asfound_[\w-]{43}; Expires=[^;]+; Path=\/; HttpOnly; SameSite=Lax; Secure$/,
  )
})

describe('somebody who was invited', () => {
  test('chooses a password once, and not a weak one', async () => {
    const link = await invited('once@desk.example')
    const code = new URL(link, PUBLIC).searchParams.get('code')!
    const at = browser()
    const shown = await at.get(link)
    expect([shown.status, shown.headers['cache-control']]).toEqual([200, 'no-store'])
    expect(shown.text).toContain('once@desk.example')
    for (const weak of [
      'too short',
      'passwordpassword',
      '123456789012345',
      'once@desk.example',
      'records desk desk desk',
    ]) {
      expect((await at.post('/invitation', { code, password: weak })).status, weak).toBe(422)
    }
    expect((await at.post('/invitation', { code, password })).status).toBe(303)
    expect((await at.post('/invitation', { code, password })).status).toBe(404)
    expect((await at.get(link)).status).toBe(404)
  })

  test('is asked for a second step where the organization requires one, and is nobody before', async () => {
    const name = 'steps@desk.example'
    const { began, setUp, done, codes, at } = await member(name)
    expect(began.to).toMatch(/^\/account\/second-step\?to=/)
    expect(setUp.text).toContain('<svg')
    expect(setUp.headers['cache-control']).toBe('no-store')
    expect([done.status, codes.length, new Set(codes).size]).toEqual([200, 10, 10])
    expect((await at.get('/counties/quillback/queue')).status).toBe(200)
  })

  test('has a session that is good for nothing until the code is given', async () => {
    const name = 'half@desk.example'
    const { secret } = await member(name)
    later()
    const at = browser()
    const began = await at.post('/sign-in', { name, password, to: '/counties/quillback/overview' })
    expect(began.to).toBe('/sign-in/code?to=%2Fcounties%2Fquillback%2Foverview')
    const half = at.jar.get(SESSION)
    expect((await at.get('/v1/counties')).status).toBe(401)
    expect((await at.get('/account/second-step')).to).toBe('/sign-in/code')
    const given = await at.post('/sign-in/code', {
      code: codeAt(secret, clock.now),
      to: '/counties/quillback/overview',
    })
    expect(given.to).toBe('/counties/quillback/overview')
    // Another session: whoever had the first gains nothing by it.
    expect(at.jar.get(SESSION)).not.toBe(half)
    expect((await at.get('/v1/counties')).status).toBe(200)
    const thief = browser()
    thief.jar.set(SESSION, half!)
    expect((await thief.get('/v1/counties')).status).toBe(401)
    expect((await thief.post('/sign-in/code', { code: codeAt(secret, clock.now) })).to).toMatch(/^\/sign-in/)
  })

  test('gives each code once', async () => {
    const name = 'replay@desk.example'
    const { secret } = await member(name)
    later()
    const code = codeAt(secret, clock.now)
    const [first, second] = [browser(), browser()]
    for (const at of [first, second]) await at.post('/sign-in', { name, password })
    expect((await first.post('/sign-in/code', { code })).status).toBe(303)
    expect((await second.post('/sign-in/code', { code })).status).toBe(422)
  })

  test('without the phone gives a recovery code, each once', async () => {
    const name = 'lost@desk.example'
    const { codes } = await member(name)
    const use = async (code: string) => {
      const at = browser()
      await at.post('/sign-in', { name, password })
      return (await at.post('/sign-in/code', { code })).status
    }
    expect([await use(codes[0]!), await use(codes[0]!), await use(codes[1]!.toUpperCase())]).toEqual([
      303, 422, 303,
    ])
  })

  test('waits after five wrong codes, though the next were right', async () => {
    const name = 'guessed@desk.example'
    const { secret } = await member(name)
    later()
    const at = browser()
    await at.post('/sign-in', { name, password })
    for (let time = 0; time < 6; time++)
      expect((await at.post('/sign-in/code', { code: '000000' })).status).toBe(422)
    const waiting = await at.post('/sign-in/code', { code: codeAt(secret, clock.now) })
    expect([waiting.status, Number(waiting.headers['retry-after'])]).toEqual([429, 30])
    later()
    expect((await at.post('/sign-in/code', { code: codeAt(secret, clock.now) })).status).toBe(303)
  })

  test('has the secret of the codes nowhere in the database in the clear', async () => {
    const { secret, codes } = await member('sealed@desk.example')
    const rows = await administer(database, async (tx) =>
      JSON.stringify([
        (await tx.selectFrom('second_step').selectAll().execute()).map((it) =>
          it.sealed_secret.toString('latin1'),
        ),
        (await tx.selectFrom('recovery_code').selectAll().execute()).map((it) => it.hash.toString('latin1')),
      ]),
    )
    for (const kept of [secret, ...codes]) expect(rows).not.toContain(kept)
  })
})

describe('guessing', () => {
  test('at many names from one address waits too, and from elsewhere one signs in', async () => {
    const { secret } = await member('elsewhere@desk.example')
    const from = (remoteAddress: string, name: string, words = 'not this one at all') =>
      app.inject({
        method: 'POST',
        url: '/sign-in',
        remoteAddress,
        headers: asForm,
        payload: new URLSearchParams({ name, password: words }).toString(),
      })
    const statuses: number[] = []
    for (let time = 0; time < 32; time++)
      statuses.push((await from('192.0.2.50', `nobody${time}`)).statusCode)
    expect([statuses[0], statuses.at(-1)]).toEqual([422, 429])
    expect((await from('192.0.2.51', 'elsewhere@desk.example', password)).statusCode).toBe(303)
    expect(secret).toBeDefined()
  })

  test('at a name that is not there waits like at one that is', async () => {
    const at = browser()
    const statuses: number[] = []
    for (let time = 0; time < 7; time++) {
      statuses.push((await at.post('/sign-in', { name: 'never.was', password: 'x' })).status)
    }
    expect(statuses).toEqual([422, 422, 422, 422, 422, 422, 429])
    later(901_000)
  })
})

describe('one’s own account', () => {
  test('shows where one is signed in and signs out there', async () => {
    const name = 'two@desk.example'
    const { at, secret } = await member(name)
    later()
    const other = browser()
    await other.post('/sign-in', { name, password })
    await other.post('/sign-in/code', { code: codeAt(secret, clock.now) })
    const page = await at.get('/account')
    expect(page.text).toContain('Firefox on Windows')
    const [, id] = /\/account\/sessions\/([0-9a-f-]{36})\/end/.exec(page.text)!
    expect((await at.post(`/account/sessions/${id}/end`)).status).toBe(303)
    expect([(await other.get('/account')).status, (await at.get('/account')).status]).toEqual([303, 200])
  })

  test('changes the password for who knows the old one; other sessions are over', async () => {
    const name = 'change@desk.example'
    const { at, secret } = await member(name)
    later()
    const other = browser()
    await other.post('/sign-in', { name, password })
    await other.post('/sign-in/code', { code: codeAt(secret, clock.now) })
    const change = (current: string, wanted: string) => at.post('/account/password', { current, wanted })
    expect((await change('wrong entirely now', 'some other words of mine')).status).toBe(422)
    expect((await change(password, 'passwordpassword')).status).toBe(422)
    expect((await change(password, 'some other words of mine')).status).toBe(200)
    expect([(await other.get('/account')).status, (await at.get('/account')).status]).toEqual([303, 200])
  })

  test('does not take the second step off where the organization requires it', async () => {
    const { at } = await member('keeps@desk.example')
    expect((await at.post('/account/second-step/removal', { current: password })).status).toBe(403)
  })

  test('makes a token, told once', async () => {
    const { at } = await member('token@desk.example')
    const made = await at.post('/tokens', { name: 'tablet', days: '30', 'may.quillback': 'read' })
    const [, token] = /<code>(asfound_[\w-]{43})<\/code>/.exec(made.text)!
    expect(made.headers['cache-control']).toBe('no-store')
    expect((await at.get('/tokens')).text).not.toContain(token)
    const used = await app.inject({ url: '/v1/counties', headers: { authorization: `Bearer ${token}` } })
    expect(used.statusCode).toBe(200)
  })

  test('ends unused, and ends at last', async () => {
    const { at } = await member('idle@desk.example')
    await administer(database, (tx) =>
      tx
        .updateTable('session')
        .set({ last_used_at: new Date(Date.now() - 61 * 60_000) })
        .execute(),
    )
    expect((await at.get('/account')).status).toBe(303)
  })
})

describe('a county’s own sign-in', () => {
  const claims = { sub: 'u-1', email: 'chief@county.example', email_verified: true }
  let issuer: Awaited<ReturnType<typeof openIssuer>>
  const returnTo = `${PUBLIC}/sign-in/with/quillback/return`
  const install = (secondStep: 'here' | 'provider') =>
    providers.set(
      'quillback',
      openProvider({
        county: 'quillback',
        title: 'Quillback County',
        issuer: issuer.issuer,
        clientId: 'asfound',
        clientSecret: 'hush-hush',
        secondStep,
      }),
    )
  beforeAll(async () => {
    issuer = await openIssuer({ id: 'asfound', secret: 'hush-hush', redirects: [returnTo] }, () => claims)
    install('provider')
  })
  const goThrough = async (at = browser()) => {
    const left = await at.get('/sign-in/with/quillback?to=/counties/quillback/queue')
    const back = await issuer.passThrough(String(left.to))
    return { at, back, answer: await at.get(`${back.pathname}${back.search}`) }
  }

  test('is offered on the page', async () => {
    expect((await browser().get('/sign-in')).text).toContain('Sign in with Quillback County')
  })

  test('lets nobody in who was not invited', async () => {
    const { answer } = await goThrough()
    expect([answer.status, answer.text]).toEqual([422, expect.stringContaining('Nobody is invited')])
  })

  test('lets in whom the county invited by that address, and knows them again by their identity there', async () => {
    await invited(claims.email)
    const first = await goThrough()
    expect([first.answer.status, first.answer.to]).toEqual([303, '/counties/quillback/queue'])
    expect((await first.at.get('/counties/quillback/queue')).status).toBe(200)
    const before = claims.email
    claims.email = 'renamed@county.example'
    expect((await goThrough()).answer.status).toBe(303)
    claims.email = before
  })

  test('takes no address that the provider did not verify', async () => {
    await invited('unsure@county.example')
    Object.assign(claims, { sub: 'u-2', email: 'unsure@county.example', email_verified: false })
    expect((await goThrough()).answer.status).toBe(422)
    Object.assign(claims, { email_verified: true })
    expect((await goThrough()).answer.status).toBe(303)
  })

  test('takes an identity for nobody else’s account, though the address is theirs', async () => {
    Object.assign(claims, { sub: 'u-3', email: 'unsure@county.example' })
    expect((await goThrough()).answer.status).toBe(422)
  })

  test('lets in no firm, whatever its people are called there', async () => {
    const { setPassword } = await import('../../../src/operations/access/set-password.ts')
    await setPassword(database, { account: people.firm.account, name: 'firm@county.example', password })
    Object.assign(claims, { sub: 'u-4', email: 'firm@county.example' })
    expect((await goThrough()).answer.status).toBe(422)
  })

  test('asks for the second step here, where the provider’s does not count', async () => {
    install('here')
    Object.assign(claims, { sub: 'u-1', email: 'chief@county.example' })
    expect((await goThrough()).answer.to).toMatch(/^\/account\/second-step/)
    install('provider')
  })

  test('can’t be come back from in another browser, a second time, or with another state', async () => {
    const { at, back } = await goThrough()
    expect((await at.get(`${back.pathname}${back.search}`)).status).toBe(422)
    expect((await browser().get(`${back.pathname}${back.search}`)).status).toBe(422)
    const other = browser()
    const left = await other.get('/sign-in/with/quillback')
    const again = await issuer.passThrough(String(left.to))
    again.searchParams.set('state', 'forged')
    expect((await other.get(`${again.pathname}${again.search}`)).status).toBe(422)
  })

  test('says so when it does not answer', async () => {
    providers.set(
      'nowhere',
      openProvider({
        county: 'nowhere',
        title: 'Nowhere County',
        issuer: 'http://127.0.0.1:9',
        clientId: 'x',
        clientSecret: undefined,
        secondStep: 'here',
      }),
    )
    expect((await browser().get('/sign-in/with/nowhere')).status).toBe(503)
    expect((await browser().get('/sign-in/with/elsewhere')).status).toBe(404)
    providers.delete('nowhere')
  })
})

test('the log of all this holds no password, code, name, link, token or address', async () => {
  const lines: string[] = []
  const into = new Writable({
    write: (chunk, _, done) => {
      lines.push(String(chunk))
      done()
    },
  })
  const logged = await buildApp({ ...services, logger: createLogger('debug', into) })
  const { link, secret } = await member('logged@desk.example')
  later()
  const ask = (method: 'GET' | 'POST', url: string, fields?: Record<string, string>, cookie = '') =>
    logged.inject({
      method,
      url,
      remoteAddress: '192.0.2.77',
      headers: { ...asForm, cookie },
      ...(fields ? { payload: new URLSearchParams(fields).toString() } : {}),
    })
  await ask('GET', link)
  await ask('POST', '/sign-in', { name: 'logged@desk.example', password: 'the wrong one altogether' })
  const began = await ask('POST', '/sign-in', { name: 'logged@desk.example', password })
  const cookie = String(began.headers['set-cookie']).split(';', 1)[0]!
  const code = codeAt(secret, clock.now)
  await ask('POST', '/sign-in/code', { code }, cookie)
  await logged.inject({ url: '/v1/people/own', headers: { authorization: `Bearer ${chief}` } })
  await logged.close()
  const text = lines.join('')
  expect(lines.filter((line) => line.includes('"answered"')).length).toBe(5)
  const told = [
    password,
    'wrong one',
    code,
    'logged@desk',
    link.split('=')[1]!,
    cookie.split('=')[1]!,
    chief,
    '192.0.2.77',
  ]
  expect(told.filter((secretText) => text.includes(secretText))).toEqual([])
})

describe('where one is sent after signing in', () => {
  test.each([
    'https://evil.example/',
    '//evil.example',
    '/\\evil.example',
    'javascript:alert(1)',
    '/sign-out',
    '%2f%2fevil.example',
  ])('is here, whatever was asked: %s', async (to) => {
    const page = await browser().get(`/sign-in?to=${encodeURIComponent(to)}`)
    const [, kept] = /name="to" value="([^"]*)"/.exec(page.text)!
    const url = new URL(kept!.replaceAll('&#39;', "'"), 'https://here.example')
    expect(url.host).toBe('here.example')
  })
})
