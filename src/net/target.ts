import type { LookupAddress } from 'node:dns'
import { lookup } from 'node:dns/promises'
import { isIP } from 'node:net'
import { err, ok, type Result } from '../base/result.ts'
import { isPublicAddress } from './public-address.ts'

/** An address that somebody gave and this service is to send to; checked, with where it was found to lead. */
export type Target = { readonly url: URL; readonly addresses: readonly LookupAddress[] }

/** The world as the check sees it; tests put another in its place. */
export type Outside = {
  readonly resolve: (host: string) => Promise<readonly LookupAddress[]>
  readonly isPublic: (address: string) => boolean
  /** Unencrypted targets are for tests alone. */
  readonly protocols: readonly string[]
}

export const INTERNET: Outside = {
  resolve: (host) => lookup(host, { all: true, verbatim: true }),
  isPublic: isPublicAddress,
  protocols: ['https:'],
}

const MOST_CHARACTERS = 2_000

/**
 * Whether something may be sent to `text`, or in words why not. Every address its name leads to must be public: one
 * private one among them would be tried when the others do not answer. The result is good for this moment; whoever
 * sends checks again and connects to what was checked (`postTo`).
 */
export async function checkTarget(
  text: string,
  { resolve, isPublic, protocols }: Outside = INTERNET,
): Promise<Result<Target, string>> {
  if (text.length > MOST_CHARACTERS) return err(`is longer than ${MOST_CHARACTERS} characters`)
  if (!URL.canParse(text))
    return err('is not a valid address: write it in full, for example https://example.org/news')
  const url = new URL(text)
  if (!protocols.includes(url.protocol)) return err('must begin with https://')
  if (url.username !== '' || url.password !== '') return err('must not contain a name or password')
  if (url.hash !== '') return err('must not have a part after #, which is never sent')
  const host = url.hostname.replace(/^\[|\]$/g, '')
  const addresses = isIP(host) ? [{ address: host, family: isIP(host) }] : await resolve(host).catch(() => [])
  if (addresses.length === 0) return err('was not found: check its name')
  if (!addresses.every(({ address }) => isPublic(address))) {
    return err('leads to this machine, its network or a reserved address: use a public address')
  }
  return ok({ url, addresses })
}
