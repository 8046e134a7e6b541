const part = encodeURIComponent

/** Where the pages are. A view asks here and writes no address of its own. */
export const countyPath = (county: string): string => `/counties/${part(county)}`
export const searchPath = (county: string, asked?: string): string =>
  `${countyPath(county)}/search${asked === undefined ? '' : `?q=${part(asked)}`}`
export const queuePath = (county: string): string => `${countyPath(county)}/queue`
export const overviewPath = (county: string): string => `${countyPath(county)}/overview`
export const patternsPath = (county: string): string => `${countyPath(county)}/patterns`
export const rulesPath = (county: string): string => `${countyPath(county)}/rules`
export const importsPath = (county: string): string => `${countyPath(county)}/imports`
export const packPath = (county: string, pack: string): string =>
  `${rulesPath(county)}/${pack.split('/').map(part).join('/')}`
export const inspectionsPath = (county: string): string => `${countyPath(county)}/inspections`
export const parcelPath = (county: string, parcel: string): string =>
  `${countyPath(county)}/parcels/${part(parcel)}`
export const systemsPath = (county: string, parcel: string): string => `${parcelPath(county, parcel)}/systems`
export const briefPath = (county: string, parcel: string): string => `${parcelPath(county, parcel)}/brief`
export const lettersPath = (county: string, parcel: string): string => `${parcelPath(county, parcel)}/letters`
export const subscribePath = (county: string, parcel: string): string =>
  `${parcelPath(county, parcel)}/subscriptions`
export const changesPath = (county: string): string => `${countyPath(county)}/changes`
export const unsubscribePath = (county: string, subscription: string): string =>
  `${countyPath(county)}/subscriptions/${part(subscription)}/end`
export const permitPath = (county: string, permit: string): string =>
  `${countyPath(county)}/permits/${part(permit)}`
export const filingPath = (county: string, permit: string): string =>
  `${permitPath(county, permit)}/filing-changes`
export const reconciliationPath = (county: string, id: string): string =>
  `${countyPath(county)}/reconciliations/${part(id)}`
export const decisionsPath = (county: string, discrepancy: string): string =>
  `${countyPath(county)}/discrepancies/${part(discrepancy)}/decisions`
export const differenceAnchor = (discrepancy: string): string => `d-${discrepancy}`
/** The picture of a document's page, which the API serves. */
export const pagePicturePath = (county: string, document: string, page: number): string =>
  `/v1${countyPath(county)}/documents/${part(document)}/pages/${page}.png`
/** A letter's PDF, which the API serves, and the page where anyone who holds its code can check it. */
export const letterPdfPath = (id: string): string => `/v1/letters/${part(id)}.pdf`
export const letterCheckPath = (code: string): string => `/letters/${part(code)}`
