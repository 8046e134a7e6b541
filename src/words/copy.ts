import type { Language } from './language.ts'

/** One thing said in every language. Without one of them it does not compile. */
export type Said<T = string> = { readonly [L in Language]: T }

/** The sentences of one page; hold a record to it with `satisfies Copy`. A sentence with values in it is a function. */
export type Copy = Readonly<Record<string, Said<unknown>>>

export type CopyIn<C extends Copy> = { readonly [K in keyof C]: C[K][Language] }

export const inLanguage = <C extends Copy>(copy: C, language: Language): CopyIn<C> =>
  Object.fromEntries(Object.entries(copy).map(([name, said]) => [name, said[language]])) as CopyIn<C>
