import { randomBytes } from 'node:crypto'
import { tokenHash } from '../../store/access/token.ts'

/** 32 signs, five bits each; without i, l, o and u, which are taken for others (Crockford's base 32; from memory). */
const SIGNS = '0123456789abcdefghjkmnpqrstvwxyz'
const GROUPS = 6
const GROUP_LENGTH = 4
const COUNT = 10

/** Codes for the day the phone is lost: 120 random bits each, so that a fast hash keeps them (ASVS 5.0, 6.5.2). */
export const newRecoveryCodes = (): readonly string[] =>
  Array.from({ length: COUNT }, () =>
    Array.from({ length: GROUPS }, () =>
      [...randomBytes(GROUP_LENGTH)].map((byte) => SIGNS[byte % 32]).join(''),
    ).join('-'),
  )

/** What is kept of one; blanks, hyphens and capitals in what was typed do not matter. */
export const recoveryHash = (typed: string): Buffer =>
  tokenHash(
    typed
      .toLowerCase()
      .replaceAll(/[^a-z0-9]/g, '')
      .replaceAll('o', '0')
      .replaceAll(/[il]/g, '1'),
  )
