import { type Argon2Parameters, argon2, randomBytes, timingSafeEqual } from 'node:crypto'
import { promisify } from 'node:util'

const derive = promisify(argon2)

/**
 * Costs of a hash: 19 MiB, two passes, one lane, the least that OWASP's Password Storage Cheat Sheet recommends for
 * argon2id (from memory). A stored hash carries its own costs, so that raising these leaves older hashes good.
 */
const COSTS = { memory: 19_456, passes: 2, parallelism: 1 } as const
const TAG_BYTES = 32
const FORM =
  /^\$argon2id\$v=19\$m=(\d{1,9}),t=(\d{1,4}),p=(\d{1,3})\$([A-Za-z0-9+/]{11,86})\$([A-Za-z0-9+/]{22,86})$/

const unpadded = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '')

/** What is kept of a password: `$argon2id$v=19$m=…,t=…,p=…$salt$hash`, as the reference implementation writes it. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16)
  const hash = await derived(password, salt, COSTS, TAG_BYTES)
  const { memory, passes, parallelism } = COSTS
  return `$argon2id$v=19$m=${memory},t=${passes},p=${parallelism}$${unpadded(salt)}$${unpadded(hash)}`
}

/** Whether a password is the one a hash was made of. False for a hash that can't be read. */
export async function isPassword(password: string, kept: string): Promise<boolean> {
  const [, memory, passes, parallelism, salt, hash] = FORM.exec(kept) ?? []
  if (salt === undefined || hash === undefined) return false
  const expected = Buffer.from(hash, 'base64')
  const costs = { memory: Number(memory), passes: Number(passes), parallelism: Number(parallelism) }
  const found = await derived(password, Buffer.from(salt, 'base64'), costs, expected.length)
  return timingSafeEqual(found, expected)
}

/** Whether a hash was made with other costs than are taken now: it is made anew when its password is next given. */
export function needsRefresh(kept: string): boolean {
  const [, memory, passes, parallelism] = FORM.exec(kept) ?? []
  return (
    Number(memory) !== COSTS.memory ||
    Number(passes) !== COSTS.passes ||
    Number(parallelism) !== COSTS.parallelism
  )
}

/** The same password typed on another keyboard: composed and decomposed letters are one (NIST SP 800-63B; from memory). */
const derived = (
  password: string,
  nonce: Buffer,
  costs: Pick<Argon2Parameters, 'memory' | 'passes' | 'parallelism'>,
  tagLength: number,
): Promise<Buffer> =>
  derive('argon2id', { message: Buffer.from(password.normalize('NFKC')), nonce, tagLength, ...costs })
