import { countyPath } from '../layout/addresses.ts'

const part = encodeURIComponent

export const documentsPath = (county: string): string => `${countyPath(county)}/documents`
export const documentPath = (county: string, id: string): string => `${documentsPath(county)}/${part(id)}`
/** One of several permits of a paper, counted from 0. */
export const permitPath = (county: string, id: string, permit: number): string =>
  `${documentPath(county, id)}?permit=${permit}`
