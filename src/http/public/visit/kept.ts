import { createStore, del, entries, get, set, update } from 'idb-keyval'
import { type KeptVisit, nameOf } from '../../pages/visit/sending/kept-visit.ts'

/** A photo on this phone, until the service has it and a while longer. */
export type KeptPhoto = {
  /** Its Idempotency-Key too: made once, with the photo. */
  readonly id: string
  /** Which visit it is of (`nameOf`), and which of that parcel's: another day is another. */
  readonly visit: string
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

const visits = createStore('asfound-visits', 'visits')
const photos = createStore('asfound-photos', 'photos')

export const keptVisit = (name: string): Promise<KeptVisit | undefined> => get<KeptVisit>(name, visits)
export const keepVisit = (visit: KeptVisit): Promise<void> => set(nameOf(visit), visit, visits)
export const allVisits = async (): Promise<readonly KeptVisit[]> =>
  (await entries<string, KeptVisit>(visits)).map(([, visit]) => visit)

/** Changes what is kept in one step, so that two tabs do not undo each other. Undefined where it is no longer kept. */
export async function changeVisit(
  name: string,
  change: (visit: KeptVisit) => KeptVisit,
): Promise<KeptVisit | undefined> {
  let after: KeptVisit | undefined
  await update<KeptVisit>(
    name,
    (visit) => {
      after = visit && change(visit)
      return after as KeptVisit
    },
    visits,
  )
  return after
}

export const keepPhoto = (photo: KeptPhoto): Promise<void> => set(photo.id, photo, photos)
export const forgetPhoto = (id: string): Promise<void> => del(id, photos)
/** In the order they were taken. */
export const photosOf = async ({ keys, ...visit }: KeptVisit): Promise<readonly KeptPhoto[]> =>
  (await entries<string, KeptPhoto>(photos))
    .map(([, photo]) => photo)
    .filter((photo) => photo.visit === nameOf(visit) && photo.begun === keys.begin)
    .sort((a, b) => (a.takenAt < b.takenAt ? -1 : 1))
