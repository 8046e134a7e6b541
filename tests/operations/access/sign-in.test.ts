import { beforeEach, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { signIn, signOut } from '../../../src/operations/access/sign-in.ts'
import { findSession } from '../../../src/store/access/sessions.ts'
import { tokenHash } from '../../../src/store/access/token.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { services, people } = await testApp()
const { database } = services
const { account, organization, role } = people.reviewer
const password = 'a long and quiet river'
const set = (over: Partial<Parameters<typeof setPassword>[1]> = {}) =>
  setPassword(database, { account, name: 'Records.Desk', password, ...over })
const from = { address: '192.0.2.7', browser: 'Firefox on Windows' }
const who = (secret: string) => findSession(database, tokenHash(secret))

beforeEach(async () => must(await set()))

describe('signing in', () => {
  test('by name, in any case, and password begins a session of that account in its counties', async () => {
    const { secret, endsAt } = must(await signIn(services, { name: ' records.desk ', password, ...from }))
    expect((await who(secret))?.caller).toMatchObject({
      account,
      organization,
      role,
      counties: ['quillback'],
    })
    expect(endsAt.getTime() - services.clock().getTime()).toBeGreaterThan(11 * 3_600_000)
  })

  test('is refused in the same words for a wrong password and for a name that is not there', async () => {
    const wrong = await signIn(services, {
      name: 'records.desk',
      password: 'a long and quiet rivet',
      ...from,
    })
    const nobody = await signIn(services, { name: 'nobody.here', password, ...from })
    expect(wrong.ok).toBe(false)
    expect(nobody).toEqual(wrong)
  })

  test('the session is kept by its hash alone', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password, ...from }))
    const rows = await administer(database, async (tx) => {
      const { sql } = await import('kysely')
      return (await sql<{ line: string }>`select session::text as line from session`.execute(tx)).rows
    })
    expect(rows.length).toBeGreaterThan(0)
    expect(JSON.stringify(rows)).not.toContain(secret)
  })

  test('waits after six wrong passwords, even with the right one, and not after five', async () => {
    const wrong = () => signIn(services, { name: 'records.desk', password: 'not this one at all', ...from })
    for (let time = 0; time < 5; time++) await wrong()
    expect((await signIn(services, { name: 'records.desk', password, ...from })).ok).toBe(true)
    for (let time = 0; time < 6; time++) await wrong()
    expect(await signIn(services, { name: 'records.desk', password, ...from })).toEqual({
      ok: false,
      error: { why: 'wait', seconds: expect.any(Number) },
    })
  })
})

describe('a session is over', () => {
  test('when it is ended', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password, ...from }))
    await signOut(services, secret)
    expect(await who(secret)).toBeUndefined()
  })

  test('when the password is changed', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password, ...from }))
    must(await set({ password: 'another river altogether' }))
    expect(await who(secret)).toBeUndefined()
  })

  test('when the account is suspended', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password, ...from }))
    const suspend = (at: Date | null) =>
      administer(database, (tx) =>
        tx.updateTable('account').set({ suspended_at: at }).where('id', '=', account).execute(),
      )
    await suspend(new Date())
    expect(await who(secret)).toBeUndefined()
    expect((await signIn(services, { name: 'records.desk', password, ...from })).ok).toBe(false)
    await suspend(null)
  })
})

describe('a password that is set', () => {
  test.each([
    [{ password: 'too short' }, 'the password has 9 characters and needs at least 15'],
    [{ password: 'x'.repeat(129) }, 'the password has more than 128 characters'],
    [{ name: 'x' }, 'the name has to have 3 to 80 letters'],
    [{ name: 'white space' }, 'the name has to have 3 to 80 letters'],
  ])('%j is refused', async (over, says) => {
    const refused = await set(over)
    expect(refused).toMatchObject({ ok: false, error: expect.stringContaining(says) })
  })
})
