import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto'
import { link, mkdir, open, readFile, rm } from 'node:fs/promises'
import path from 'node:path'
import { OutsideFailure } from '../../base/outside-failure.ts'

/** Seals small secrets that have to be read again: AES-256-GCM by a key that is not in the database. */
export type Vault = {
  /** `purpose` says what for and whose: what was sealed for one purpose does not open for another. */
  readonly seal: (plain: string, purpose: string) => Buffer
  /** Undefined where it was sealed by another key or for another purpose, or was altered. */
  readonly open: (sealed: Buffer, purpose: string) => string | undefined
}

export type VaultSource = {
  /** 32 random bytes in base64, from the environment. */
  readonly key: string | undefined
  /** A file that holds the same, as a secret store mounts it. */
  readonly file: string | undefined
  /** Without either, a key of the service's own lies here, made when there is none. */
  readonly dataFolder: string
}

export const OWN_KEY_FILE = 'access-key'
const KEY_BYTES = 32
const NONCE_BYTES = 12
const TAG_BYTES = 16

/** Throws OutsideFailure, which never repeats a part of the key, when it can't be had. */
export async function openVault({ key, file, dataFolder }: VaultSource): Promise<Vault> {
  if (key !== undefined) return vaultOf(read(key, 'ASFOUND_ACCESS_KEY'))
  if (file !== undefined) return vaultOf(read(await textOf(file), file))
  const own = path.join(dataFolder, OWN_KEY_FILE)
  await makeOwnKey(dataFolder, own)
  return vaultOf(read(await textOf(own), own))
}

/** Its sealed parts: nonce, tag, content. A nonce is random: a key seals few enough for that by far. */
export function vaultOf(key: Buffer): Vault {
  const bound = (purpose: string) => createHash('sha256').update(`asfound 1 ${purpose}`).digest()
  return {
    seal: (plain, purpose) => {
      const nonce = randomBytes(NONCE_BYTES)
      const cipher = createCipheriv('aes-256-gcm', key, nonce, { authTagLength: TAG_BYTES })
      cipher.setAAD(bound(purpose))
      const content = Buffer.concat([cipher.update(plain, 'utf8'), cipher.final()])
      return Buffer.concat([nonce, cipher.getAuthTag(), content])
    },
    open: (sealed, purpose) => {
      if (sealed.length < NONCE_BYTES + TAG_BYTES) return undefined
      const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, NONCE_BYTES), {
        authTagLength: TAG_BYTES,
      })
      decipher.setAAD(bound(purpose))
      decipher.setAuthTag(sealed.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES))
      try {
        const plain = [decipher.update(sealed.subarray(NONCE_BYTES + TAG_BYTES)), decipher.final()]
        return Buffer.concat(plain).toString('utf8')
      } catch {
        return undefined
      }
    },
  }
}

/** Written whole beside its place and linked into it: of several processes that start at once all have the same one. */
async function makeOwnKey(dataFolder: string, place: string): Promise<void> {
  const draft = `${place}.${randomBytes(6).toString('hex')}`
  try {
    await mkdir(dataFolder, { recursive: true, mode: 0o700 })
    const handle = await open(draft, 'wx', 0o600)
    try {
      await handle.writeFile(`${randomBytes(KEY_BYTES).toString('base64')}\n`)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await link(draft, place).catch((fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EEXIST') throw fault
    })
  } catch (cause) {
    throw new OutsideFailure(`The encryption key cannot be saved in ${dataFolder}`, { cause })
  } finally {
    await rm(draft, { force: true })
  }
}

function read(text: string, from: string): Buffer {
  const key = Buffer.from(text.trim(), 'base64')
  if (key.length === KEY_BYTES) return key
  throw new OutsideFailure(
    `${from} holds no key of 32 bytes in base64; make one with: openssl rand -base64 32`,
  )
}

const textOf = (file: string): Promise<string> =>
  readFile(file, 'utf8').catch((cause: Error) => {
    throw new OutsideFailure(`The encryption key cannot be read from ${file}`, { cause })
  })
