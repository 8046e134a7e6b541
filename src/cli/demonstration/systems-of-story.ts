import type { SystemGiven } from '../../reconcile/system-given.ts'
import { ownSystem, type System } from '../../records/system.ts'
import type { ParcelFile } from './story.ts'

/** A parcel's number serves as its id, as a permit's does; a second file of one parcel is of another system. */
export function systemOf(file: ParcelFile, files: readonly ParcelFile[]): System {
  const { number } = file.parcel
  const same = files.filter(({ parcel }) => parcel.number === number)
  const own = ownSystem({ id: number, number })
  if (!file.system) return own
  const { use, label = null, parcels } = file.system
  return {
    ...own,
    id: same[0] === file ? number : `${number} ${same.indexOf(file) + 1}`,
    use,
    label,
    revision: 1,
    parcels: parcels.map(({ parcel, serves, liesOn, bedrooms = null }) => ({
      parcel,
      number: parcel,
      serves,
      liesOn,
      bedrooms,
      designFlowGpd: null,
    })),
  }
}

/** The same that the service gathers: see `operations/reconciliation/system-given.ts`. */
export function givenOf(file: ParcelFile, files: readonly ParcelFile[]): SystemGiven | undefined {
  const system = systemOf(file, files)
  const served = system.parcels.filter(({ serves }) => serves)
  const oneOfSeveral = files.some(
    (other) =>
      other !== file &&
      systemOf(other, files).parcels.some(
        (it) => it.serves && served.some(({ parcel }) => parcel === it.parcel),
      ),
  )
  const liesElsewhere = system.parcels.some(({ serves, liesOn }) => liesOn && !serves)
  if (system.revision === 0 && !oneOfSeveral) return undefined
  return {
    id: system.id,
    revision: system.revision,
    oneOfSeveral,
    liesElsewhere,
    serves: served.map(({ parcel, bedrooms, designFlowGpd }) => ({
      parcel,
      permits: file.permits
        .filter(({ inFileOf }) => (inFileOf ?? file.parcel.number) === parcel)
        .map(({ record }) => record.number),
      bedrooms,
      designFlowGpd,
    })),
  }
}
