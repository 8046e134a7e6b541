import type { KeyObject } from 'node:crypto'
import { CompactSign, compactVerify, createLocalJWKSet, errors, type JSONWebKeySet } from 'jose'
import { canonicalText } from '../../base/canonical.ts'
import { err, ok, type Result } from '../../base/result.ts'
import { ALGORITHM, openSigner } from '../../letters/signing/signer.ts'
import { type NotedHeads, notedHeads } from './head.ts'

/** So that it is never taken for a signature on something else (RFC 8725, 3.11). */
const TYPE = 'audit-heads+jws'

/** Heads as they are kept outside: in plain JSON, and sealed by the key of the letters where there is one. */
export async function sealHeads(noted: NotedHeads, key: KeyObject | undefined): Promise<string> {
  if (key === undefined) return `${JSON.stringify(noted, null, 2)}\n`
  const { publicKey } = await openSigner(key)
  const signature = await new CompactSign(new TextEncoder().encode(canonicalText(noted)))
    .setProtectedHeader({ alg: ALGORITHM, kid: publicKey.kid, typ: TYPE })
    .sign(key)
  return `${JSON.stringify({ ...noted, signature }, null, 2)}\n`
}

/** Reads them back; what is sealed must be what its signature vouches for, by one of the published keys. */
export async function readHeads(text: string, keys: JSONWebKeySet): Promise<Result<NotedHeads, string>> {
  try {
    const { signature, ...rest } = JSON.parse(text) as { readonly signature?: string }
    const noted = notedHeads.safeParse(rest)
    if (!noted.success) return err('it holds no heads of an audit')
    if (signature === undefined) return ok(noted.data)
    const { payload, protectedHeader } = await compactVerify(signature, createLocalJWKSet(keys), {
      algorithms: [ALGORITHM],
    })
    const sealed = new TextDecoder().decode(payload)
    return protectedHeader.typ === TYPE && sealed === canonicalText(noted.data)
      ? ok(noted.data)
      : err('what it says is not what was sealed')
  } catch (fault) {
    if (fault instanceof SyntaxError || fault instanceof errors.JOSEError)
      return err(`its seal does not hold, or it can’t be read (${fault.message})`)
    throw fault
  }
}
