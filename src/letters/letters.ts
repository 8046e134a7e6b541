import { openPress, type Press } from './press/press.ts'
import { type KeySource, signingKey } from './signing/key-source.ts'
import { openSigner, type Signer } from './signing/signer.ts'

/** What it takes to make a letter: something that prints, something that signs, and where people check. */
export type Letters = {
  readonly print: Press['print']
  readonly signer: Signer
  /** The address where a code is checked, as the letter carries it. */
  readonly checkAddress: (code: string) => string
}

export type OpenLetters = Letters & { readonly close: () => void }

/** Throws OutsideFailure when the key can't be had. The press starts with the first letter. */
export async function openLetters(source: KeySource, publicAddress: string): Promise<OpenLetters> {
  const signer = await openSigner(await signingKey(source))
  const { print, close } = openPress()
  const base = publicAddress.replace(/\/+$/, '')
  return { print, signer, checkAddress: (code) => `${base}/letters/${code}`, close }
}
