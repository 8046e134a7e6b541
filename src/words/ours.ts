import type { OurText } from '../records/whose.ts'

/**
 * Our own words: literals and what is made of them. Takes numbers and our own words alone, so that a sentence for
 * agents with a firm's, a permit's or a reviewer's text in it does not compile.
 */
export const ours = (strings: TemplateStringsArray, ...parts: readonly (OurText | number)[]): OurText =>
  strings.reduce((text, piece, at) => `${text}${parts[at - 1]}${piece}`) as OurText

/** The same with a capital at its head. */
export const oursCapital = (text: OurText): OurText =>
  (text.charAt(0).toUpperCase() + text.slice(1)) as OurText
