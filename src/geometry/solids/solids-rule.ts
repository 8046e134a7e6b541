import type { SolidsDistance } from './solids-readings.ts'

/** A threshold. Distances in inches; shares in percent; a table by nominal gallons and liquid depth. */
export type SolidsCondition =
  | { readonly when: 'distance-at-most'; readonly distance: SolidsDistance; readonly inches: number }
  | {
      readonly when: 'sludge-distance-at-most-by-tank'
      readonly rows: readonly {
        readonly gal: number
        readonly liquidDepthFt: number
        readonly inches: number
      }[]
    }
  | { readonly when: 'share-above'; readonly of: 'liquid-depth'; readonly pct: number }

/**
 * One named rule of when solids call for pumping: when any of its conditions holds. Rules of different authorities
 * contradict one another and are never merged; the rules themselves, with their citations, are packs.
 */
export type SolidsRule = {
  readonly id: string
  readonly name: string
  readonly anyOf: readonly [SolidsCondition, ...SolidsCondition[]]
}

export const SOLIDS_VERDICTS = ['due', 'not-due', 'too-close-to-call', 'cannot-tell'] as const
export type SolidsVerdict = (typeof SOLIDS_VERDICTS)[number]
