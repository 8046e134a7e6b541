import type { FindingsRead } from '../../../operations/findings/read-findings.ts'
import type { Photo } from '../../../store/photos.ts'
import { printTime } from '../../../words/date.ts'
import { capital } from '../words/plain.ts'

export type InspectionPhotos = {
  readonly inspectedOn: string
  /** Null where the reader may not know it. */
  readonly firm: string | null
  /** In the order in which the inspection met them, the whole site last. */
  readonly parts: readonly PartPhotos[]
}
type PartPhotos = { readonly about: string; readonly photos: readonly PhotoOnFile[] }
type PhotoOnFile = {
  readonly id: string
  readonly alt: string
  /** `9:20 a.m.` by the clock of whoever took it; null where nothing says when. */
  readonly at: string | null
  readonly width: number
  readonly height: number
}

const SITE = 'The whole site'

/** The photos of a parcel by inspection, the newest first, and by component. */
export function presentPhotos(
  inspections: readonly Pick<FindingsRead, 'id' | 'firmName' | 'record'>[],
  photos: readonly Photo[],
): readonly InspectionPhotos[] {
  return [...inspections]
    .sort((one, other) => other.record.inspectedOn.localeCompare(one.record.inspectedOn))
    .flatMap(({ id, firmName, record }) => {
      const own = photos.filter(({ findings }) => findings === id)
      if (own.length === 0) return []
      const known = record.components.map(({ label }) => label)
      const named = own.flatMap(({ component }) => component ?? [])
      const parts = [...new Set([...known, ...named, null])].flatMap((component) => {
        const about = component === null ? SITE : capital(component)
        const taken = own.filter((photo) => photo.component === component)
        if (taken.length === 0) return []
        return [{ about, photos: taken.map((photo, at) => presentPhoto(photo, about, at, taken.length)) }]
      })
      return [{ inspectedOn: record.inspectedOn, firm: firmName, parts }]
    })
}

function presentPhoto(
  { id, takenAt, width, height }: Photo,
  about: string,
  at: number,
  of: number,
): PhotoOnFile {
  const [, hour, minute] = /T(\d{2}):(\d{2})/.exec(takenAt ?? '') ?? []
  return {
    id,
    alt: of === 1 ? about : `${about}, photo ${at + 1} of ${of}`,
    at: hour && minute ? printTime(Number(hour), Number(minute), 'en') : null,
    width,
    height,
  }
}
