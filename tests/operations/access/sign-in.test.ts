import { beforeEach, describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { setPassword } from '../../../src/operations/access/set-password.ts'
import { signIn, signOut } from '../../../src/operations/access/sign-in.ts'
import { findSession } from '../../../src/store/access/sign-in.ts'
import { tokenHash } from '../../../src/store/access/token.ts'
import { administer } from '../../../src/store/database/transact.ts'
import { testApp } from '../../support/app.ts'

const { services, people } = await testApp()
const { database } = services
const { account, organisation, role } = people.reviewer
const password = 'a long and quiet river'
const set = (over: Partial<Parameters<typeof setPassword>[1]> = {}) =>
  setPassword(database, { account, name: 'Records.Desk', password, counties: ['quillback'], ...over })
const who = (secret: string) => findSession(database, tokenHash(secret))

beforeEach(async () => must(await set()))

describe('signing in', () => {
  test('by name, in any case, and password begins a session of that account in its counties', async () => {
    const { secret, endsAt } = must(await signIn(services, { name: ' records.desk ', password }))
    expect((await who(secret))?.caller).toMatchObject({
      account,
      organisation,
      role,
      counties: ['quillback'],
    })
    expect(endsAt.getTime() - services.clock().getTime()).toBeGreaterThan(11 * 3_600_000)
  })

  test('is refused in the same words for a wrong password and for a name that is not there', async () => {
    const wrong = await signIn(services, { name: 'records.desk', password: 'a long and quiet rivet' })
    const nobody = await signIn(services, { name: 'nobody.here', password })
    expect(wrong.ok).toBe(false)
    expect(nobody).toEqual(wrong)
  })

  test('the session is kept by its hash alone', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password }))
    const rows = await administer(database, async (tx) => {
      const { sql } = await import('kysely')
      return (await sql<{ line: string }>`select session::text as line from session`.execute(tx)).rows
    })
    expect(rows.length).toBeGreaterThan(0)
    expect(JSON.stringify(rows)).not.toContain(secret)
  })

  test('waits after six wrong passwords, even with the right one, and not after five', async () => {
    const wrong = () => signIn(services, { name: 'records.desk', password: 'not this one at all' })
    for (let time = 0; time < 5; time++) await wrong()
    expect((await signIn(services, { name: 'records.desk', password })).ok).toBe(true)
    for (let time = 0; time < 6; time++) await wrong()
    expect(await signIn(services, { name: 'records.desk', password })).toEqual({
      ok: false,
      error: { why: 'conflict', says: 'Too many wrong passwords for this name. Try again in a minute.' },
    })
  })
})

describe('a session is over', () => {
  test('when it is ended', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password }))
    await signOut(services, secret)
    expect(await who(secret)).toBeUndefined()
  })

  test('when the password is changed', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password }))
    must(await set({ password: 'another river altogether' }))
    expect(await who(secret)).toBeUndefined()
  })

  test('when the account is suspended', async () => {
    const { secret } = must(await signIn(services, { name: 'records.desk', password }))
    const suspend = (at: Date | null) =>
      administer(database, (tx) =>
        tx.updateTable('account').set({ suspended_at: at }).where('id', '=', account).execute(),
      )
    await suspend(new Date())
    expect(await who(secret)).toBeUndefined()
    expect((await signIn(services, { name: 'records.desk', password })).ok).toBe(false)
    await suspend(null)
  })
})

describe('a password that is set', () => {
  test.each([
    [{ password: 'too short' }, 'a password has at least 15 characters'],
    [{ password: 'x'.repeat(201) }, 'a password has at most 200 characters'],
    [{ name: 'x' }, 'a name to sign in by has 3 to 80 letters'],
    [{ name: 'white space' }, 'a name to sign in by has 3 to 80 letters'],
  ])('%j is refused', async (over, says) => {
    const refused = await set(over)
    expect(refused).toMatchObject({ ok: false, error: expect.stringContaining(says) })
  })
})
