import type { ParcelNumberFormat } from '../../src/reading/parcel-number.ts'

/** How Quillback County writes parcel numbers. */
export const QUILLBACK: ParcelNumberFormat = { groups: [2, 4, 4], separator: '-', example: '07-0412-0031' }
