import http from 'node:http'
import https from 'node:https'
import type { LookupFunction } from 'node:net'
import { err, ok, type Result } from '../base/result.ts'
import { checkTarget, INTERNET, type Outside, type Target } from './target.ts'

type Sent = {
  readonly headers: Readonly<Record<string, string>>
  readonly body: string | Uint8Array
  readonly withinMs?: number
}

export type Received = { readonly status: number; readonly retryAfter: string | null }

/**
 * Sends a POST to an address that somebody gave. The name is resolved and checked anew and the connection made to the
 * very addresses that were checked, so that a name which leads elsewhere a moment later (rebinding) gains nothing.
 * Redirects are not followed: whoever is sent to is who was checked. Of the answer only its status is kept, and none
 * of its body is read. An error says in words why nothing was delivered, never what came back.
 */
export async function postTo(
  address: string,
  sent: Sent,
  outside: Outside = INTERNET,
): Promise<Result<Received, string>> {
  const target = await checkTarget(address, outside)
  return target.ok ? send(target.value, sent) : target
}

const send = ({ url, addresses }: Target, { headers, body, withinMs = 10_000 }: Sent) =>
  new Promise<Result<Received, string>>((resolve) => {
    const request = (url.protocol === 'https:' ? https : http).request(url, {
      method: 'POST',
      headers: { ...headers, 'content-length': Buffer.byteLength(body) },
      // No connection of an earlier check is used again.
      agent: false,
      lookup: only(addresses),
      signal: AbortSignal.timeout(withinMs),
      maxHeaderSize: 16_384,
    })
    request.on('response', (response) => {
      resolve(
        ok({
          status: response.statusCode ?? 0,
          retryAfter: response.headers['retry-after'] ?? null,
        }),
      )
      request.destroy()
    })
    request.on('error', (fault: NodeJS.ErrnoException) => {
      resolve(
        err(
          fault.name === 'AbortError' || fault.name === 'TimeoutError' ? 'no answer in time' : reason(fault),
        ),
      )
    })
    request.end(body)
  })

/** Answers every question for an address with those that were checked. Never asked where the host is an address itself. */
const only =
  (addresses: Target['addresses']): LookupFunction =>
  (_host, options, done) => {
    const [first] = addresses
    if (options.all) done(null, [...addresses])
    else done(null, first!.address, first!.family)
  }

const reason = ({ code = '' }: NodeJS.ErrnoException): string => {
  if (/CERT|SSL|TLS|SIGNATURE|ALTNAME/.test(code)) return `its certificate is not trusted (${code})`
  return code === '' ? 'the connection failed' : `the connection failed (${code})`
}
