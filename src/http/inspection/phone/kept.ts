import { createStore, del, entries, get, set, update } from 'idb-keyval'
import { type KeptInspection, nameOf } from '../sending/kept-inspection.ts'

/** A photo on this phone, until the service has it and a while longer. */
export type KeptPhoto = {
  /** Its Idempotency-Key too: made once, with the photo. */
  readonly id: string
  /** Which inspection it is of (`nameOf`), and which of that parcel's: another day is another. */
  readonly inspection: string
  readonly begun: string
  readonly component: string | null
  readonly bytes: ArrayBuffer
  readonly type: string
  /** ISO 8601 with the phone's offset. */
  readonly takenAt: string
  readonly keepPlace: boolean
  readonly place: { readonly lat: number; readonly lon: number; readonly radiusFt: number } | null
  /** Why the service would not take it. */
  readonly trouble: string | null
}

const inspections = createStore('asfound-inspections', 'inspections')
const photos = createStore('asfound-photos', 'photos')

export const keptInspection = (name: string): Promise<KeptInspection | undefined> =>
  get<KeptInspection>(name, inspections)
export const keepInspection = (inspection: KeptInspection): Promise<void> =>
  set(nameOf(inspection), inspection, inspections)
export const allInspections = async (): Promise<readonly KeptInspection[]> =>
  (await entries<string, KeptInspection>(inspections)).map(([, inspection]) => inspection)

/** Changes what is kept in one step, so that two tabs do not undo each other. Undefined where it is no longer kept. */
export async function changeInspection(
  name: string,
  change: (inspection: KeptInspection) => KeptInspection,
): Promise<KeptInspection | undefined> {
  let after: KeptInspection | undefined
  await update<KeptInspection>(
    name,
    (inspection) => {
      after = inspection && change(inspection)
      return after as KeptInspection
    },
    inspections,
  )
  return after
}

export const keepPhoto = (photo: KeptPhoto): Promise<void> => set(photo.id, photo, photos)
export const forgetPhoto = (id: string): Promise<void> => del(id, photos)
/** In the order they were taken. */
export const photosOf = async ({ keys, ...inspection }: KeptInspection): Promise<readonly KeptPhoto[]> =>
  (await entries<string, KeptPhoto>(photos))
    .map(([, photo]) => photo)
    .filter((photo) => photo.inspection === nameOf(inspection) && photo.begun === keys.begin)
    .sort((a, b) => (a.takenAt < b.takenAt ? -1 : 1))
