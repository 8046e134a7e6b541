import { countyPath, parcelPath } from '../layout/addresses.ts'

export const visitPath = (county: string, parcel: string, step?: string): string =>
  `${parcelPath(county, parcel)}/visit${step === undefined || step === 'start' ? '' : `?step=${encodeURIComponent(step)}`}`
export const visitPhotosPath = (county: string, parcel: string): string =>
  `${parcelPath(county, parcel)}/visit/photos`
export const visitFilePath = (county: string, parcel: string): string =>
  `${parcelPath(county, parcel)}/visit/file.json`
export const visitRulesPath = (county: string, hash: string): string =>
  `${countyPath(county)}/visit-rules/${hash}.json`
export const photoPath = (county: string, id: string, small = false): string =>
  `/v1${countyPath(county)}/photos/${id}${small ? '?size=small' : ''}`
