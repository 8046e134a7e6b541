import {
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  randomBytes,
} from 'node:crypto'
import { link, mkdir, open, readFile, rm } from 'node:fs/promises'
import path from 'node:path'
import { OutsideFailure } from '../../base/outside-failure.ts'

/** Where the key for signing is to come from; the first that is given. */
export type KeySource = {
  /** PKCS #8 in PEM, from the environment. */
  readonly pem: string | undefined
  /** A file that holds the same, as a secret store mounts it. */
  readonly file: string | undefined
  /** Without either, a key of the service's own lies here, made when there is none. */
  readonly dataFolder: string
}

export const OWN_KEY_FILE = 'letter-signing-key.pem'

/** The private key (Ed25519, RFC 8410). Throws OutsideFailure, which never repeats a part of it, when it can't be had. */
export async function signingKey({ pem, file, dataFolder }: KeySource): Promise<KeyObject> {
  if (pem !== undefined) return read(pem.replaceAll('\\n', '\n'), 'ASFOUND_SIGNING_KEY')
  if (file !== undefined) return read(await textOf(file), file)
  const own = path.join(dataFolder, OWN_KEY_FILE)
  const there = await textIfThere(own)
  if (there !== undefined) return read(there, own)
  await makeOwnKey(dataFolder)
  return read(await textOf(own), own)
}

/**
 * Makes a key where there is none: written whole beside its place, readable by its owner alone, then linked into it, so
 * that of several processes that start at once all end up with the same one.
 */
async function makeOwnKey(dataFolder: string): Promise<void> {
  await mkdir(dataFolder, { recursive: true, mode: 0o700 })
  const place = path.join(dataFolder, OWN_KEY_FILE)
  const draft = `${place}.${randomBytes(6).toString('hex')}`
  try {
    const handle = await open(draft, 'wx', 0o600)
    try {
      await handle.writeFile(newKeyPem())
      await handle.sync()
    } finally {
      await handle.close()
    }
    await link(draft, place).catch((fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EEXIST') throw fault
    })
  } catch (cause) {
    throw new OutsideFailure(`The key for signing letters can’t be kept in ${dataFolder}`, { cause })
  } finally {
    await rm(draft, { force: true })
  }
}

export const newKeyPem = (): string =>
  generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' }) as string

export const publicKeyOf = (key: KeyObject): KeyObject => createPublicKey(key)

function read(pem: string, from: string): KeyObject {
  const want = 'make one with: openssl genpkey -algorithm ed25519'
  try {
    const key = createPrivateKey(pem)
    if (key.asymmetricKeyType === 'ed25519') return key
  } catch {
    throw new OutsideFailure(`${from} holds no private key in PEM (PKCS #8); ${want}`)
  }
  throw new OutsideFailure(`${from} holds a key of another kind than Ed25519; ${want}`)
}

const textOf = (file: string): Promise<string> =>
  readFile(file, 'utf8').catch((cause: Error) => {
    throw new OutsideFailure(`The key for signing letters can’t be read from ${file}`, { cause })
  })

async function textIfThere(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8')
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ENOENT') return undefined
    throw new OutsideFailure(`The key for signing letters can’t be read from ${file}`, { cause })
  }
}
