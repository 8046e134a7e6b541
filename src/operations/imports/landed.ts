import type { RowFault } from '../../store/import-rejections.ts'

/** What became of a row. */
export type Landed =
  | {
      readonly line: number
      readonly became: 'added' | 'changed' | 'unchanged'
      readonly parcel: string | null
    }
  | { readonly line: number; readonly became: 'rejected'; readonly faults: readonly RowFault[] }

export const rejected = (line: number, ...faults: readonly RowFault[]): Landed => ({
  line,
  became: 'rejected',
  faults,
})
