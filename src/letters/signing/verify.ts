import { createHash } from 'node:crypto'
import { compactVerify, createLocalJWKSet, errors, type JSONWebKeySet } from 'jose'
import { err, ok, type Result } from '../../base/result.ts'
import { type LetterStatement, letterStatement, statementText } from '../statement.ts'
import { ALGORITHM, TYPE } from './signer.ts'

/**
 * What a signature vouches for, by published keys and nothing else; or in words why it vouches for nothing. Only the
 * one algorithm and the one type are taken, whatever the signature itself claims.
 */
export async function verifyLetter(
  signature: string,
  keys: JSONWebKeySet,
): Promise<Result<LetterStatement, string>> {
  try {
    const { payload, protectedHeader } = await compactVerify(signature, createLocalJWKSet(keys), {
      algorithms: [ALGORITHM],
    })
    if (protectedHeader.typ !== TYPE) return err('it is a signature on something else than a letter')
    const text = new TextDecoder('utf-8', { fatal: true }).decode(payload)
    const statement = letterStatement.safeParse(JSON.parse(text))
    if (!statement.success) return err('what is signed is not the statement of a letter')
    if (statementText(statement.data) !== text) return err('what is signed is not in canonical form')
    return ok(statement.data)
  } catch (fault) {
    return err(whyNot(fault))
  }
}

export const isPdfOf = (statement: LetterStatement, pdf: Uint8Array): boolean =>
  createHash('sha256').update(pdf).digest('hex') === statement.pdfSha256

function whyNot(fault: unknown): string {
  if (fault instanceof errors.JWKSNoMatchingKey) return 'none of the published keys made this signature'
  if (fault instanceof errors.JWSSignatureVerificationFailed)
    return 'the signature does not fit: a byte of the statement, of the signature or of the key is another'
  if (fault instanceof errors.JOSEError || fault instanceof SyntaxError || fault instanceof TypeError)
    return `it is no signature that can be read (${fault.message})`
  throw fault
}
