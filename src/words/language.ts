/**
 * The languages that people can read Asfound in. English is complete and governs; Spanish covers what the public reads.
 */
export const LANGUAGES = ['en', 'es'] as const
export type Language = (typeof LANGUAGES)[number]

export const isLanguage = (text: string): text is Language => LANGUAGES.some((known) => known === text)

type Wanted = { readonly language: Language; readonly quality: number }

/**
 * The language of an answer: the one chosen on a page, else the best of what the browser asks for, else English.
 * `Accept-Language` is read as in RFC 9110, 12.5.4: ranges with a quality from 0 to 1, of which 0 means "not this one".
 * A range with a region (`es-MX`) counts as its language; of equals the first wins.
 */
export function pickLanguage(acceptLanguage: string | undefined, chosen: string | undefined): Language {
  if (chosen !== undefined && isLanguage(chosen)) return chosen
  const wanted = (acceptLanguage ?? '').split(',').flatMap(wantedBy)
  const best = wanted.reduce<Wanted | null>(
    (found, it) => (it.quality > (found?.quality ?? 0) ? it : found),
    null,
  )
  return best?.language ?? 'en'
}

function wantedBy(range: string): readonly Wanted[] {
  const match = /^\s*([a-z]{2,3})(?:-[a-z0-9]+)*\s*(?:;\s*q=([01](?:\.\d{0,3})?)\s*)?$/i.exec(range)
  const language = match?.[1]?.toLowerCase() ?? ''
  return isLanguage(language) ? [{ language, quality: Number(match?.[2] ?? 1) }] : []
}
