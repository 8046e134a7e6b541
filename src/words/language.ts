/** The languages that people outside the county's staff may read in. The first is the one that governs. */
export const LANGUAGES = ['en', 'es'] as const
export type Language = (typeof LANGUAGES)[number]
