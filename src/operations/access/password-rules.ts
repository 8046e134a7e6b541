import type { OptionsType, ZxcvbnFactory } from '@zxcvbn-ts/core'

/**
 * Of any kind and in any script: length is what makes a password hard to guess. OWASP ASVS 5.0, 6.2.1 recommends 15
 * characters, 6.2.9 asks to take at least 64; NIST SP 800-63B-4, 3.1.1.2 requires 15 of a password alone (from memory).
 */
export const LEAST_CHARACTERS = 15
export const MOST_CHARACTERS = 128

/** Guesses that somebody who knows the usual ways would need, as a power of ten; below it a password is refused. */
const LEAST_GUESSES_LOG10 = 10

let estimator: Promise<ZxcvbnFactory> | undefined

/** Loaded when the first password is chosen: the list takes a moment to unpack, and most processes never need it. */
async function loadEstimator(): Promise<ZxcvbnFactory> {
  const [{ ZxcvbnFactory }, { dictionary, adjacencyGraphs }] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
  ])
  // Rare for a real password: the words of passphrase lists count as words only where they stand alone.
  return new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs } as OptionsType)
}

/**
 * What is wrong with a password somebody wants, or null. Refused are those on the list of breached ones (some 49,000,
 * offline) and what is little more than one of them, than a row of keys, a date or a repetition, or than what the
 * account itself is called (ASVS 5.0, 6.2.4, 6.2.11, 6.2.12). No kinds of character are asked for (6.2.5).
 */
export async function passwordFault(
  password: string,
  aboutAccount: readonly string[],
): Promise<string | null> {
  const count = [...password].length
  if (count < LEAST_CHARACTERS) {
    return `has ${count} characters and needs at least ${LEAST_CHARACTERS}: a few words work well`
  }
  if (count > MOST_CHARACTERS) return `has more than ${MOST_CHARACTERS} characters`
  estimator ??= loadEstimator()
  const words = aboutAccount.flatMap((text) => [
    text,
    ...text.split(/[@\s]+/),
    ...text.split(/[^\p{L}\p{N}]+/u),
  ])
  const own = ['asfound', 'septic', ...words].filter((word) => word.length > 2)
  const { guessesLog10 } = (await estimator).check(password, own)
  return guessesLog10 < LEAST_GUESSES_LOG10
    ? 'is among the passwords that are tried first, or close to one: take a few words that have nothing to do with each other'
    : null
}
