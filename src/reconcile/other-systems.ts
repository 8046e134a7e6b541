/** What an inspection may find of systems and lots beside the one that it is about. */
export const OTHER_SYSTEMS = ['second-system', 'serves-another-lot', 'lies-on-another-lot'] as const
export type OtherSystem = (typeof OTHER_SYSTEMS)[number]
