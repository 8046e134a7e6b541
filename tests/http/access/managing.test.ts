import { beforeAll, describe, expect, test } from 'vitest'
import { addAccount, addOrganization, issueToken } from '../../../src/store/access/enrol.ts'
import type { Role } from '../../../src/store/database/actor.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { app, services } = await testApp()
const { database } = services
const password = 'four words of no kinship'

type Who = { readonly account: string; readonly organization: string; readonly token: string }

/** Somebody who looks after an organization of their own, with a token for managing. */
const administrator = (kind: 'county' | 'firm' | 'agent', role: Role, name: string): Promise<Who> =>
  administer(database, async (tx) => {
    const organization = await addOrganization(tx, { kind, name, counties: ['quillback'] })
    const account = await addAccount(tx, { organization, role, label: 'office', administers: true })
    const token = await issueToken(tx, { account, name: 'tests', counties: ['quillback'], manages: true })
    return { account, organization, token }
  })

const as = async (token: string, method: 'GET' | 'POST' | 'PUT' | 'DELETE', url: string, body?: object) => {
  const answer = await app.inject({
    method,
    url,
    headers: { authorization: `Bearer ${token}` },
    ...(body ? { payload: body } : {}),
  })
  return { status: answer.statusCode, body: answer.body === '' ? undefined : answer.json() }
}

let county: Who
let firm: Who
let rival: Who
beforeAll(async () => {
  county = await administrator('county', 'reviewer', 'Records office')
  firm = await administrator('firm', 'firm', 'Egret Inspections')
  rival = await administrator('firm', 'firm', 'Teal Inspections')
})

const codeOf = (link: string): string => new URL(link).searchParams.get('code') ?? ''

describe('inviting somebody', () => {
  test('makes an account of the same organization and a link that is told once', async () => {
    const made = await as(firm.token, 'POST', '/v1/people', {
      signInName: 'Crew.One@egret.example',
      label: 'crew one',
    })
    expect(made).toMatchObject({
      status: 201,
      body: {
        person: { role: 'firm', signInName: 'crew.one@egret.example', state: 'invited', administers: false },
      },
    })
    const read = await as(firm.token, 'GET', `/v1/people/${made.body.person.id}`)
    expect(JSON.stringify(read.body)).not.toContain(codeOf(made.body.invitation.link))
    expect((await as(rival.token, 'GET', `/v1/people/${made.body.person.id}`)).status).toBe(404)
  })

  test('by a name that somebody has is refused, in whichever organization', async () => {
    await as(firm.token, 'POST', '/v1/people', { signInName: 'taken@egret.example', label: 'x' })
    const again = await as(rival.token, 'POST', '/v1/people', {
      signInName: 'TAKEN@egret.example',
      label: 'x',
    })
    expect(again.status).toBe(409)
  })

  test('by a name that was written down by somebody and never used is taken over when its link is over', async () => {
    const asked = { signInName: 'squatted@egret.example', label: 'x' }
    await as(rival.token, 'POST', '/v1/people', asked)
    expect((await as(firm.token, 'POST', '/v1/people', asked)).status).toBe(409)
    await administer(database, (tx) =>
      tx
        .updateTable('invitation')
        .set({ expires_at: new Date(0) })
        .where('used_at', 'is', null)
        .execute(),
    )
    expect((await as(firm.token, 'POST', '/v1/people', asked)).status).toBe(201)
  })

  test('by name after name that others have is soon made to wait', async () => {
    const prober = await administrator('firm', 'firm', 'Probing Inspections')
    const taken = { signInName: 'squatted@egret.example', label: 'x' }
    for (let tries = 0; tries < 21; tries++)
      expect((await as(prober.token, 'POST', '/v1/people', taken)).status).toBe(409)
    const waits = await as(prober.token, 'POST', '/v1/people', {
      signInName: 'free@probing.example',
      label: 'x',
    })
    expect([waits.status, waits.body.detail]).toEqual([409, expect.stringMatching(/Wait \d+ seconds/)])
    const other = { signInName: 'free@egret.example', label: 'x' }
    expect((await as(firm.token, 'POST', '/v1/people', other)).status).toBe(201)
  })

  test('by what is no name is refused with where it is wrong', async () => {
    const wrong = await as(firm.token, 'POST', '/v1/people', { signInName: 'white space', label: 'x' })
    expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, '/signInName'])
  })
})

describe('changing somebody', () => {
  const invited = async (label: string, over: object = {}) => {
    const signInName = `${label.replaceAll(' ', '.')}@egret.example`
    return (await as(firm.token, 'POST', '/v1/people', { signInName, label, ...over })).body.person
      .id as string
  }

  test('suspends and lets back in; their tokens go with them, at once', async () => {
    const id = await invited('to be suspended')
    const scopes = [{ county: 'quillback', may: 'read' }]
    const { secret } = (await as(firm.token, 'POST', '/v1/tokens', { account: id, name: 'tablet', scopes }))
      .body
    expect((await as(secret, 'GET', '/v1/counties')).status).toBe(200)
    expect((await as(firm.token, 'PUT', `/v1/people/${id}/suspension`)).body.state).toBe('suspended')
    expect((await as(secret, 'GET', '/v1/counties')).status).toBe(401)
    expect((await as(firm.token, 'DELETE', `/v1/people/${id}/suspension`)).body.state).toBe('invited')
    expect((await as(secret, 'GET', '/v1/counties')).status).toBe(200)
  })

  test('never leaves an organization that nobody looks after', async () => {
    for (const [method, part] of [
      ['PUT', 'suspension'],
      ['DELETE', 'administration'],
    ] as const) {
      expect((await as(firm.token, method, `/v1/people/own/${part}`)).status).toBe(409)
    }
    const id = await invited('second administrator')
    expect((await as(firm.token, 'PUT', `/v1/people/${id}/administration`)).body.administers).toBe(true)
    expect((await as(firm.token, 'DELETE', `/v1/people/${id}/administration`)).body.administers).toBe(false)
  })

  test('and an administrator who was invited and never came is nobody to leave it to', async () => {
    const own = await administrator('firm', 'firm', 'Lone Inspections')
    const asked = { signInName: 'never@lone.example', label: 'second', administers: true }
    const made = (await as(own.token, 'POST', '/v1/people', asked)).body
    const leave = () => as(own.token, 'DELETE', '/v1/people/own/administration')
    expect((await leave()).status).toBe(409)
    expect((await as(own.token, 'PUT', '/v1/people/own/suspension')).status).toBe(409)
    const { acceptInvitation } = await import('../../../src/operations/access/accept-invitation.ts')
    expect((await acceptInvitation(services, codeOf(made.invitation.link), password)).ok).toBe(true)
    expect((await leave()).status).toBe(200)
  })

  test('of two who suspend each other at once, one stays', async () => {
    const a = await administrator('firm', 'firm', 'Pair Inspections')
    const b = await administer(database, async (tx) => {
      const account = await addAccount(tx, {
        organization: a.organization,
        role: 'firm',
        label: 'b',
        administers: true,
      })
      const token = await issueToken(tx, { account, name: 't', counties: ['quillback'], manages: true })
      return { account, token }
    })
    const both = await Promise.all([
      as(a.token, 'PUT', `/v1/people/${b.account}/suspension`),
      as(b.token, 'PUT', `/v1/people/${a.account}/suspension`),
    ])
    expect(both.filter(({ status }) => status === 200)).toHaveLength(1)
  })

  test('is not for who only belongs to the organization, nor for another’s administrator', async () => {
    const id = await invited('ordinary')
    const { secret } = (
      await as(firm.token, 'POST', '/v1/tokens', { account: id, name: 'own', scopes: [], manages: true })
    ).body
    expect((await as(secret, 'PUT', `/v1/people/${firm.account}/suspension`)).status).toBe(403)
    expect((await as(secret, 'GET', '/v1/people')).status).toBe(404)
    expect((await as(secret, 'GET', '/v1/people/own')).body.id).toBe(id)
    expect((await as(secret, 'GET', `/v1/people/${firm.account}`)).status).toBe(404)
    expect((await as(rival.token, 'PUT', `/v1/people/${id}/suspension`)).status).toBe(404)
    expect((await as(county.token, 'DELETE', `/v1/people/${id}`)).status).toBe(404)
  })
})

describe('tokens', () => {
  const scopes = [{ county: 'quillback', may: 'read' }]

  test('may no more than who issues them: not another county, and no writing by who only reads', async () => {
    const beyond = await as(firm.token, 'POST', '/v1/tokens', {
      name: 'x',
      scopes: [{ county: 'elsewhere', may: 'read' }],
    })
    expect([beyond.status, beyond.body.errors[0].pointer]).toEqual([422, '/scopes/0'])
    const reading = await as(firm.token, 'POST', '/v1/tokens', { name: 'reads', scopes, manages: true })
    const more = await as(reading.body.secret, 'POST', '/v1/tokens', {
      name: 'writes',
      scopes: [{ county: 'quillback', may: 'write' }],
    })
    expect(more.status).toBe(422)
  })

  test('that may only read can’t write, and can try what stores nothing', async () => {
    const { secret } = (await as(firm.token, 'POST', '/v1/tokens', { name: 'reads', scopes })).body
    const write = await as(secret, 'POST', '/v1/counties/quillback/parcels/07-0412-0031/findings', {})
    expect([write.status, write.body.detail]).toEqual([403, 'This token can only read in this county.'])
    expect((await as(secret, 'POST', '/v1/reconciliations/trial', {})).status).toBe(422)
  })

  test('that do not manage issue none', async () => {
    const { secret } = (await as(firm.token, 'POST', '/v1/tokens', { name: 'plain', scopes })).body
    expect((await as(secret, 'POST', '/v1/tokens', { name: 'more', scopes })).status).toBe(403)
    expect((await as(secret, 'GET', '/v1/tokens')).status).toBe(404)
  })

  test('are listed with name, scopes, expiry and last use, and never told again', async () => {
    const made = (await as(firm.token, 'POST', '/v1/tokens', { name: 'listed', scopes, days: 7 })).body
    await as(made.secret, 'GET', '/v1/counties')
    const listed = (await as(firm.token, 'GET', '/v1/tokens')).body.items
    const own = listed.find((it: { id: string }) => it.id === made.token.id)
    expect(own).toMatchObject({ name: 'listed', scopes, manages: false, withdrawnAt: null })
    expect(own.lastUsedAt).not.toBeNull()
    expect(new Date(own.expiresAt).getTime() - new Date(own.createdAt).getTime()).toBe(7 * 86_400_000)
    expect(JSON.stringify(listed)).not.toContain(made.secret)
    const ofRival = (await as(rival.token, 'GET', '/v1/tokens')).body.items
    expect(ofRival.every((it: { account: string }) => it.account === rival.account)).toBe(true)
  })

  test('are withdrawn at once, and only by whose they are', async () => {
    const { secret, token } = (await as(firm.token, 'POST', '/v1/tokens', { name: 'short', scopes })).body
    expect((await as(rival.token, 'DELETE', `/v1/tokens/${token.id}`)).status).toBe(404)
    expect((await as(secret, 'GET', '/v1/counties')).status).toBe(200)
    expect((await as(firm.token, 'DELETE', `/v1/tokens/${token.id}`)).status).toBe(200)
    expect((await as(secret, 'GET', '/v1/counties')).status).toBe(401)
  })

  test('are rotated: the new one is good, the old one ends at once or after its grace', async () => {
    const first = (await as(firm.token, 'POST', '/v1/tokens', { name: 'turning', scopes })).body
    const second = (
      await as(firm.token, 'POST', `/v1/tokens/${first.token.id}/rotation`, { graceMinutes: 10 })
    ).body
    expect([second.token.name, second.token.scopes]).toEqual(['turning', scopes])
    for (const { secret } of [first, second])
      expect((await as(secret, 'GET', '/v1/counties')).status).toBe(200)
    const third = (await as(firm.token, 'POST', `/v1/tokens/${second.token.id}/rotation`, {})).body
    expect((await as(second.secret, 'GET', '/v1/counties')).status).toBe(401)
    expect((await as(third.secret, 'GET', '/v1/counties')).status).toBe(200)
    expect((await as(firm.token, 'POST', `/v1/tokens/${second.token.id}/rotation`, {})).status).toBe(409)
  })
})

describe('a county', () => {
  const taking = (name: string, signInName: string) => ({
    kind: 'firm',
    name,
    administrator: { signInName, label: 'office' },
  })

  test('takes a firm in, whose first person is invited to look after it', async () => {
    const body = taking('Grebe Inspections', 'office@grebe.example')
    const taken = await as(county.token, 'POST', '/v1/counties/quillback/organizations', body)
    expect(taken).toMatchObject({
      status: 201,
      body: { organization: { name: 'Grebe Inspections', withdrawnAt: null } },
    })
    const items = (await as(county.token, 'GET', '/v1/counties/quillback/organizations')).body.items
    expect(items.map((it: { name: string }) => it.name)).toContain('Grebe Inspections')
  })

  test('undoes all of it where the name of the first person is taken', async () => {
    const url = '/v1/counties/quillback/organizations'
    await as(county.token, 'POST', url, taking('First Inspections', 'same@name.example'))
    expect(
      (await as(county.token, 'POST', url, taking('Second Inspections', 'same@name.example'))).status,
    ).toBe(409)
    const { items } = (await as(county.token, 'GET', url)).body
    expect(items.map((it: { name: string }) => it.name)).not.toContain('Second Inspections')
  })

  test('shuts a firm out: its tokens show it nothing of the county from then on', async () => {
    const shut = await administrator('firm', 'firm', 'Shut Inspections')
    const url = `/v1/counties/quillback/organizations/${shut.organization}`
    expect((await as(shut.token, 'GET', '/v1/counties/quillback')).status).toBe(200)
    expect((await as(county.token, 'DELETE', url)).status).toBe(204)
    expect((await as(shut.token, 'GET', '/v1/counties/quillback')).status).toBe(404)
    expect((await as(county.token, 'PUT', url)).body.withdrawnAt).toBeNull()
    expect((await as(shut.token, 'GET', '/v1/counties/quillback')).status).toBe(200)
  })

  test('can’t shut out its own department, nor admit another’s', async () => {
    const own = `/v1/counties/quillback/organizations/${county.organization}`
    expect((await as(county.token, 'DELETE', own)).status).toBe(409)
    const nobody = '/v1/counties/quillback/organizations/01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'
    expect((await as(county.token, 'PUT', nobody)).status).toBe(404)
  })
})

describe('a person’s data', () => {
  test('is told to them whole, and erased: the name is gone, what they did stays under a pseudonym', async () => {
    const made = (
      await as(firm.token, 'POST', '/v1/people', { signInName: 'leaving@egret.example', label: 'Lee' })
    ).body
    const { id } = made.person
    const { acceptInvitation } = await import('../../../src/operations/access/accept-invitation.ts')
    expect((await acceptInvitation(services, codeOf(made.invitation.link), password)).ok).toBe(true)
    const data = (await as(firm.token, 'GET', `/v1/people/${id}/data`)).body
    expect(data.person.signInName).toBe('leaving@egret.example')
    expect(data.happenings.map((it: { kind: string }) => it.kind)).toEqual(['joined', 'invited'])
    expect((await as(firm.token, 'DELETE', `/v1/people/${id}`)).status).toBe(204)
    const left = await as(firm.token, 'GET', `/v1/people/${id}`)
    expect(left.body).toMatchObject({
      state: 'erased',
      signInName: null,
      label: `former member ${id.slice(-4)}`,
    })
    expect((await as(firm.token, 'DELETE', `/v1/people/${id}/suspension`)).status).toBe(409)
    const everything = await administer(database, async (tx) => {
      const tables = ['sign_in', 'account', 'session', 'access_token', 'access_event', 'invitation'] as const
      const rows = await Promise.all(tables.map((table) => tx.selectFrom(table).selectAll().execute()))
      return JSON.stringify(rows)
    })
    expect(everything).not.toContain('leaving@egret.example')
    expect(everything).not.toContain('"Lee"')
  })
})
