import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addAccount, addOrganization, issueToken } from '../../../src/store/access/enrol.ts'
import { findToken } from '../../../src/store/access/find-token.ts'
import { tokenHash } from '../../../src/store/access/token.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { app, services } = await testApp({ settings: { ANSWERS: 'fast' } })
const { database } = services
const PASSWORD = 'four words of no kinship'
const origin = 'http://records.example'
let made = 0

/** An organization with two who look after it and one who does not, and tokens of each kind; the hand has the last. */
const world = () =>
  administer(database, async (tx) => {
    made += 1
    const organization = await addOrganization(tx, {
      kind: 'firm',
      name: `Firm ${made}`,
      counties: ['quillback'],
    })
    const account = (label: string, administers: boolean) =>
      addAccount(tx, { organization, role: 'firm', label, administers })
    const [boss, other, crew] = [
      await account('boss', true),
      await account('other', true),
      await account('crew', false),
    ]
    const token = (of: string, name: string, may: 'read' | 'write', manages = false) =>
      issueToken(tx, {
        account: of,
        name,
        counties: ['quillback'],
        ...(may === 'read' ? { writes: [] } : {}),
        manages,
      })
    await token(boss, 'writes', 'write', true)
    await token(other, 'writes too', 'write', true)
    await token(crew, 'tablets', 'write')
    return { people: [boss, other, crew], hand: await token(boss, 'reads', 'read', true) }
  })

type Held = {
  readonly tokens: string[]
  readonly cookies: string[]
  readonly links: string[]
  readonly people: string[]
}

const ask = async (
  token: string,
  method: 'GET' | 'POST' | 'PUT' | 'DELETE',
  url: string,
  payload?: object,
) => {
  const headers = { authorization: `Bearer ${token}` }
  const answer = await app.inject({ method, url, headers, ...(payload ? { payload } : {}) })
  return { status: answer.statusCode, body: answer.body === '' ? undefined : answer.json() }
}
const form = (url: string, fields: Record<string, string>) =>
  app.inject({
    method: 'POST',
    url,
    headers: { origin, 'content-type': 'application/x-www-form-urlencoded', host: 'records.example' },
    payload: new URLSearchParams(fields).toString(),
  })

/** What a hand that holds some of it can do next; each takes what it is given into the hand. */
const STEPS = {
  async invite(held: Held, token: string, n: number) {
    const signInName = `p${made}.${n}.${held.people.length}@firm.example`
    const { status, body } = await ask(token, 'POST', '/v1/people', {
      signInName,
      label: 'x',
      administers: n % 2 === 0,
    })
    if (status === 201) {
      held.people.push(body.person.id)
      held.links.push(`${body.invitation.link} ${signInName}`)
    }
  },
  async reinvite(held: Held, token: string, n: number) {
    const { status, body } = await ask(
      token,
      'POST',
      `/v1/people/${held.people[n % held.people.length]}/invitation`,
    )
    if (status === 201) held.links.push(`${body.link} nobody`)
  },
  async accept(held: Held, _token: string, n: number) {
    const [link, name] = held.links[n % Math.max(1, held.links.length)]?.split(' ') ?? []
    if (!link || !name) return
    const code = new URL(link).searchParams.get('code') ?? ''
    await form('/invitation', { code, password: PASSWORD })
    const signedIn = await form('/sign-in', { name, password: PASSWORD })
    if (signedIn.cookies.length > 0) held.cookies.push(signedIn.cookies[0]!.value)
  },
  async issue(held: Held, token: string, n: number) {
    const scopes = [{ county: 'quillback', may: n % 3 === 0 ? 'read' : 'write' }]
    const account = n % 2 === 0 ? 'own' : held.people[n % held.people.length]
    const asked = { name: 'made', account, scopes, manages: n % 2 === 0, days: 300 }
    const { status, body } = await ask(token, 'POST', '/v1/tokens', asked)
    if (status === 201) held.tokens.push(body.secret)
  },
  async rotate(held: Held, token: string, n: number) {
    const { body } = await ask(token, 'GET', '/v1/tokens')
    const one = body.items?.[n % Math.max(1, body.items.length)]
    if (!one) return
    const { status, body: rotated } = await ask(token, 'POST', `/v1/tokens/${one.id}/rotation`, {
      graceMinutes: 60,
    })
    if (status === 201) held.tokens.push(rotated.secret)
  },
  async promote(held: Held, token: string, n: number) {
    await ask(token, 'PUT', `/v1/people/${held.people[n % held.people.length]}/administration`)
  },
  async letBackIn(held: Held, token: string, n: number) {
    const at = `/v1/people/${held.people[n % held.people.length]}/suspension`
    await ask(token, 'PUT', at)
    await ask(token, 'DELETE', at)
  },
} as const
const names = Object.keys(STEPS) as (keyof typeof STEPS)[]

describe('a token that reads, and manages', () => {
  test('gives no more than it has, through whatever is done with it and with what it gives', async () => {
    const step = fc.tuple(fc.constantFrom(...names), fc.nat(11), fc.nat(11))
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 10 }), async (steps) => {
        const { people, hand } = await world()
        const held: Held = { tokens: [hand], cookies: [], links: [], people: [...people] }
        for (const [name, which, n] of steps)
          await STEPS[name](held, held.tokens[which % held.tokens.length]!, n)
        for (const token of held.tokens) {
          const found = await findToken(database, tokenHash(token))
          expect(found?.caller.writes ?? []).toEqual([])
        }
        // Somebody who is signed in may all that their organization may.
        expect(held.cookies).toEqual([])
      }),
      { numRuns: Number(process.env.TOKEN_RUNS ?? 25) },
    )
  })

  test('and one that writes everywhere its organization does, invites', async () => {
    const { people } = await world()
    const token = await administer(database, (tx) =>
      issueToken(tx, { account: people[0]!, name: 'all', counties: ['quillback'], manages: true }),
    )
    const held: Held = { tokens: [token], cookies: [], links: [], people: [...people] }
    await STEPS.invite(held, token, 0)
    await STEPS.accept(held, token, 0)
    expect(held.cookies).toHaveLength(1)
  })
})
