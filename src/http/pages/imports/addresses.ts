import { importsPath } from '../layout/addresses.ts'

export const importPath = (county: string, id: string): string =>
  `${importsPath(county)}/${encodeURIComponent(id)}`
/** The rows that were not taken, as a file, which the API serves. */
export const rejectedPath = (county: string, id: string): string => `/v1${importPath(county, id)}/rejected`
