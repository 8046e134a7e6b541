import { countyPath, parcelPath } from '../pages/layout/addresses.ts'

export const inspectionPath = (county: string, parcel: string, step?: string): string =>
  `${parcelPath(county, parcel)}/inspection${step === undefined || step === 'start' ? '' : `?step=${encodeURIComponent(step)}`}`
export const inspectionPhotosPath = (county: string, parcel: string): string =>
  `${parcelPath(county, parcel)}/inspection/photos`
export const inspectionFilePath = (county: string, parcel: string): string =>
  `${parcelPath(county, parcel)}/inspection/file.json`
export const inspectionRulesPath = (county: string, hash: string): string =>
  `${countyPath(county)}/inspection-rules/${hash}.json`
export const photoPath = (county: string, id: string, small = false): string =>
  `/v1${countyPath(county)}/photos/${id}${small ? '?size=small' : ''}`

/** A parcel's number as people read it; in an address it may say which of its systems. */
export const numberShown = ({ number }: { readonly number: string }): string => number.split('~')[0]!
