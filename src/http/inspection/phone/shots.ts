import { withoutNotes } from '../../../files/pictures/without-notes.ts'
import { nameOf } from '../sending/kept-inspection.ts'
import { momentInWords } from '../view/moment.ts'
import { shot } from '../view/photos-view.ts'
import type { PhotoShown } from '../view/shown.ts'
import { forgetPhoto, type KeptPhoto, keepPhoto, photosOf } from './kept.ts'
import { locate } from './locate.ts'
import type { Walk } from './walk.ts'

/** The limits of the service, said before anything is kept. */
const TYPES = ['image/jpeg', 'image/png', 'image/webp']
const MOST_BYTES = 20 * 1_048_576

export const photosShown = ({ shots, sent }: Walk): readonly PhotoShown[] => [
  ...sent,
  ...shots.map(({ id, component, takenAt, trouble }) => ({
    id,
    component,
    src: null,
    taken: momentInWords(takenAt),
    says: trouble ? `not taken: ${trouble}` : 'on this phone',
  })),
]

export async function loadShots(walk: Walk): Promise<void> {
  walk.shots = await photosOf(walk.inspection)
}

/** The pictures that are only here, drawn small; those that were sent show by themselves. */
export function paintShots(walk: Walk): void {
  for (const place of walk.root.querySelectorAll<HTMLElement>('[data-photo] .unsent')) {
    const photo = walk.shots.find(
      ({ id }) => id === place.closest('[data-photo]')?.getAttribute('data-photo'),
    )
    if (photo) void draw(photo, place)
  }
}

export function relistShots(walk: Walk, component: string | null): void {
  const list = walk.root.querySelector('#shots')
  if (!list) return
  list.innerHTML = photosShown(walk)
    .filter((photo) => photo.component === component)
    .map((photo) => shot(photo).text)
    .join('')
  paintShots(walk)
}

async function draw({ bytes, type }: KeptPhoto, place: HTMLElement): Promise<void> {
  try {
    const picture = await createImageBitmap(new Blob([bytes], { type }), {
      resizeWidth: 240,
      resizeQuality: 'low',
    })
    const canvas = document.createElement('canvas')
    canvas.width = picture.width
    canvas.height = picture.height
    canvas.getContext('2d')?.drawImage(picture, 0, 0)
    picture.close()
    canvas.setAttribute('role', 'img')
    canvas.setAttribute('aria-label', place.getAttribute('aria-label') ?? '')
    place.replaceWith(canvas)
  } catch {
    place.textContent = 'no preview'
  }
}

/** Keeps a photo on this phone. Gives the reason where it can’t be. */
export async function takeShot(
  walk: Walk,
  file: File,
  component: string | null,
  keepPlace: boolean,
): Promise<string | null> {
  const picture = await acceptable(file)
  if (typeof picture === 'string') return picture
  // The place goes before anything is kept, not only before it is sent.
  const bytes = keepPlace
    ? picture.bytes
    : (withoutNotes(new Uint8Array(picture.bytes))?.buffer ?? picture.bytes)
  const photo: KeptPhoto = {
    id: crypto.randomUUID(),
    inspection: nameOf(walk.inspection),
    begun: walk.inspection.keys.begin,
    component,
    bytes,
    type: picture.type,
    takenAt: localIso(new Date(file.lastModified || Date.now())),
    keepPlace,
    place: null,
    trouble: null,
  }
  try {
    await keepPhoto(photo)
  } catch {
    return 'This phone has no storage left for the photo. Free some space, or send what is waiting first.'
  }
  if (keepPlace) {
    const place = await locate()
    if (typeof place === 'string') {
      await loadShots(walk)
      return `The photo is saved without its location. ${place}`
    }
    await keepPhoto({ ...photo, place })
  }
  await loadShots(walk)
  return null
}

type Taken = { readonly bytes: ArrayBuffer; readonly type: string }

/** As it came, where the service takes it so; another kind that this phone can show is made a JPEG. */
async function acceptable(file: File): Promise<Taken | string> {
  const known = TYPES.includes(file.type)
    ? { bytes: await file.arrayBuffer(), type: file.type }
    : await asJpeg(file)
  if (!known) return 'That is not a supported image: use JPEG, PNG or WebP.'
  return known.bytes.byteLength > MOST_BYTES
    ? 'That picture is larger than 20 MB: take a smaller one.'
    : known
}

async function asJpeg(file: File): Promise<Taken | null> {
  try {
    const picture = await createImageBitmap(file)
    const canvas = new OffscreenCanvas(picture.width, picture.height)
    canvas.getContext('2d')?.drawImage(picture, 0, 0)
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 })
    return { bytes: await blob.arrayBuffer(), type: 'image/jpeg' }
  } catch {
    return null
  }
}

export async function dropShot(walk: Walk, id: string): Promise<void> {
  await forgetPhoto(id)
  await loadShots(walk)
}

/** ISO 8601 by this phone's clock, with its offset. */
export function localIso(at: Date): string {
  const minutes = -at.getTimezoneOffset()
  const [sign, ahead] = [minutes < 0 ? '-' : '+', Math.abs(minutes)]
  const two = (figure: number): string => String(figure).padStart(2, '0')
  const local = new Date(at.getTime() + minutes * 60_000).toISOString().slice(0, 19)
  return `${local}${sign}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`
}
