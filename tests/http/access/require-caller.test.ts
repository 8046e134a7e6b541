import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { describe, expect, test } from 'vitest'
import { ALL_ROLES } from '../../../src/http/access/require-caller.ts'
import { buildApp } from '../../../src/http/app.ts'
import { issueToken } from '../../../src/store/access/enrol.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const routes: FastifyPluginAsyncZod = async (app) => {
  app.get('/counties/:county/desk', { config: { access: ['reviewer'] } }, async ({ actor }) => actor)
  app.post('/counties/:county/desk', { config: { access: ['reviewer'] } }, async ({ actor }) => actor)
  app.get('/anybody', { config: { access: ALL_ROLES } }, async ({ caller }) => ({ role: caller.role }))
  app.get('/open', { config: { access: 'open' } }, async () => ({ hello: 'anyone' }))
}

const { ask, people, services, app } = await testApp({ routes })

describe('who is let through', () => {
  test('a token of the county and the role, as an actor in that county', async () => {
    const { status, body } = await ask('reviewer', { url: '/v1/counties/quillback/desk' })
    const { account, organization, role, county } = people.reviewer
    expect([status, body]).toEqual([200, { account, organization, role, county }])
  })

  test('any token where all roles may, nobody without', async () => {
    expect((await ask('agent', { url: '/v1/anybody' })).body).toEqual({ role: 'agent' })
    expect((await ask('nobody', { url: '/v1/anybody' })).status).toBe(401)
  })

  test('anyone at all on an open route, with a bad token too', async () => {
    expect((await ask('nobody', { url: '/v1/open', headers: { authorization: 'Bearer x' } })).status).toBe(
      200,
    )
  })
})

describe('who is not', () => {
  test.each([
    ['without a token', {}, 'Bearer realm="asfound"'],
    [
      'with an unknown token',
      { authorization: 'Bearer nonsense' },
      'Bearer realm="asfound", error="invalid_token"',
    ],
    ['with another scheme', { authorization: 'Basic dTpw' }, 'Bearer realm="asfound"'],
  ])('%s: 401 that says how to sign in', async (_, headers, challenge) => {
    const answer = await ask('nobody', { url: '/v1/counties/quillback/desk', headers })
    expect(answer.status).toBe(401)
    expect(answer.headers['www-authenticate']).toBe(challenge)
    expect(answer.body.type).toBe('/problems/not-signed-in')
  })

  test('another county’s reviewer, who is told there is nothing: 404 for reads and writes', async () => {
    for (const method of ['GET', 'POST'] as const) {
      expect((await ask('stranger', { method, url: '/v1/counties/quillback/desk' })).status).toBe(404)
    }
  })

  test('a county that is not there answers exactly like one that is closed', async () => {
    const [closed, none] = await Promise.all([
      ask('stranger', { url: '/v1/counties/quillback/desk' }),
      ask('stranger', { url: '/v1/counties/nowhere/desk' }),
    ])
    expect({ ...none.body, requestId: '' }).toEqual({ ...closed.body, requestId: '' })
  })

  test('the wrong role: 404 for what it may not see, 403 for what it may not do', async () => {
    expect((await ask('firm', { url: '/v1/counties/quillback/desk' })).status).toBe(404)
    const doing = await ask('firm', { method: 'POST', url: '/v1/counties/quillback/desk' })
    expect([doing.status, doing.body.detail]).toEqual([
      403,
      'This requires the role reviewer. The token has the role firm.',
    ])
  })

  test('expired, withdrawn and suspended tokens', async () => {
    const { account } = people.firm
    const issue = (expiresAt?: Date) =>
      administer(services.database, (tx) =>
        issueToken(tx, {
          account,
          name: 'short',
          counties: ['quillback'],
          ...(expiresAt ? { expiresAt } : {}),
        }),
      )
    const statusOf = async (token: string) =>
      (await app.inject({ url: '/v1/anybody', headers: { authorization: `Bearer ${token}` } })).statusCode
    expect(await statusOf(await issue(new Date(Date.now() + 60_000)))).toBe(200)
    expect(await statusOf(await issue(new Date(Date.now() - 1_000)))).toBe(401)
    const withdrawn = await issue()
    await administer(services.database, (tx) =>
      tx
        .updateTable('access_token')
        .set({ revoked_at: new Date() })
        .where('expires_at', 'is', null)
        .execute(),
    )
    expect(await statusOf(withdrawn)).toBe(401)
    const suspended = await issue()
    await administer(services.database, (tx) =>
      tx.updateTable('account').set({ suspended_at: new Date() }).where('id', '=', account).execute(),
    )
    expect(await statusOf(suspended)).toBe(401)
  })
})

test('the service does not start with a route that does not say who may call it', async () => {
  const careless: FastifyPluginAsyncZod = async (scope) => {
    scope.get('/forgotten', async () => 'everything')
  }
  await expect(buildApp(services, careless)).rejects.toThrow('/v1/forgotten does not say who may call it')
})

test('only the hash of a token is kept', async () => {
  const rows = await administer(services.database, (tx) =>
    tx.selectFrom('access_token').selectAll().execute(),
  )
  const stored = JSON.stringify(rows.map((row) => ({ ...row, hash: row.hash.toString('latin1') })))
  for (const { token } of Object.values(people)) expect(stored).not.toContain(token)
})
