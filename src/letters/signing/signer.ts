import type { KeyObject } from 'node:crypto'
import { CompactSign, calculateJwkThumbprint, exportJWK } from 'jose'
import { invariant } from '../../base/invariant.ts'
import { type LetterStatement, statementText } from '../statement.ts'
import { publicKeyOf } from './key-source.ts'

/** A public key as it is published (RFC 8037, RFC 9864). Its id is its thumbprint (RFC 7638). */
export type PublishedKey = {
  readonly kty: 'OKP'
  readonly crv: 'Ed25519'
  readonly x: string
  readonly kid: string
  readonly alg: typeof ALGORITHM
  readonly use: 'sig'
}

export type Signer = {
  readonly publicKey: PublishedKey
  /** Seals a statement: JWS in compact form (RFC 7515), the payload its canonical text. */
  readonly sign: (statement: LetterStatement) => Promise<string>
}

/** Named in full, as RFC 9864 asks in place of `EdDSA`. */
export const ALGORITHM = 'Ed25519'
/** Says what is signed, so that a signature on one thing is never taken for one on another (RFC 8725, 3.11). */
export const TYPE = 'letter+jws'

export async function openSigner(key: KeyObject): Promise<Signer> {
  const { x } = await exportJWK(publicKeyOf(key))
  invariant(x, 'an Ed25519 key has its x')
  const bare = { kty: 'OKP', crv: 'Ed25519', x } as const
  const kid = await calculateJwkThumbprint(bare)
  const header = { alg: ALGORITHM, kid, typ: TYPE }
  return {
    publicKey: { ...bare, kid, alg: ALGORITHM, use: 'sig' },
    sign: (statement) =>
      new CompactSign(new TextEncoder().encode(statementText(statement)))
        .setProtectedHeader(header)
        .sign(key),
  }
}
