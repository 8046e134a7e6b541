import { describe, expect, test } from 'vitest'
import { hashPassword, isPassword } from '../../../src/store/access/password.ts'

/**
 * The encoded hash that the reference implementation's own tests expect of argon2id, version 19, for "password" and
 * "somesalt" (github.com/P-H-C/phc-winner-argon2, src/test.c; read second-hand, as other projects' tests quote it).
 */
const REFERENCE = '$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc'

describe('a password', () => {
  test('is checked as the reference implementation of argon2id does', async () => {
    expect(await isPassword('password', REFERENCE)).toBe(true)
    expect(await isPassword('passwore', REFERENCE)).toBe(false)
  })

  test('is known again by its own hash, and no other is', async () => {
    const kept = await hashPassword('correct horse battery')
    expect(kept).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$/)
    expect(await isPassword('correct horse battery', kept)).toBe(true)
    expect(await isPassword('correct horse batterY', kept)).toBe(false)
  })

  test('has a salt of its own: the same password is kept differently each time', async () => {
    expect(await hashPassword('one and the same')).not.toBe(await hashPassword('one and the same'))
  })

  test('typed with composed and with combining letters is one password', async () => {
    expect(await isPassword('cafe\u0301 at the corner', await hashPassword('caf\u00e9 at the corner'))).toBe(
      true,
    )
  })

  test.each(['', 'plain text', '$argon2id$v=19$m=1$x', '$2b$10$abcdefghijklmnopqrstuv'])(
    'is never right for something that is no such hash: %j',
    async (kept) => {
      expect(await isPassword('anything', kept)).toBe(false)
    },
  )
})
