import { changed, nameOf } from '../../pages/visit/sending/kept-visit.ts'
import { changeVisit } from './kept.ts'
import type { Walk } from './walk.ts'

/** Short enough that a phone put into a pocket has it, long enough not to write at every stroke. */
const SOON_MS = 200

let timer: ReturnType<typeof setTimeout> | undefined

/** Keeps on this phone what stands in the fields, in a moment. */
export function keepSoon(walk: Walk, then: () => void): void {
  walk.dirty = true
  clearTimeout(timer)
  timer = setTimeout(() => void flush(walk).then(then), SOON_MS)
}

/** Keeps it now. */
export async function flush(walk: Walk): Promise<void> {
  if (!walk.dirty) return
  clearTimeout(timer)
  const { form } = walk
  walk.dirty = false
  const kept = await changeVisit(nameOf(walk.visit), (it) => changed(it, form, new Date().toISOString()))
  if (kept) walk.visit = kept
}
