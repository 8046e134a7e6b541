import { countyPath } from '../layout/addresses.ts'

export const formsPath = (county: string): string => `${countyPath(county)}/forms`
export const formPath = (county: string, id: string): string =>
  `${formsPath(county)}/${encodeURIComponent(id)}`
/** The form as a file, which the API serves. */
export const formExportPath = (county: string, id: string): string => `/v1${formPath(county, id)}/export`
