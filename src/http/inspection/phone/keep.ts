import { changed, nameOf } from '../sending/kept-inspection.ts'
import { changeInspection } from './kept.ts'
import type { Walk } from './walk.ts'

/** Short enough that a phone put into a pocket has it, long enough not to write at every stroke. */
const SOON_MS = 200

let timer: ReturnType<typeof setTimeout> | undefined

/** Keeps on this phone what stands in the fields, in a moment. */
export function keepSoon(walk: Walk, then: () => void): void {
  edited(walk)
  clearTimeout(timer)
  timer = setTimeout(() => void flush(walk).then(then), SOON_MS)
}

/** The form in the hand is ahead of what is kept, and nothing that is kept may take its place. */
export function edited(walk: Walk): void {
  walk.edits += 1
  walk.dirty = true
}

/** Keeps it now. It counts as kept once it is, and only if nothing was typed meanwhile. */
export async function flush(walk: Walk): Promise<void> {
  if (!walk.dirty) return
  clearTimeout(timer)
  const { form, edits } = walk
  const kept = await changeInspection(nameOf(walk.inspection), (it) =>
    changed(it, form, new Date().toISOString()),
  )
  if (!kept) return
  walk.inspection = kept
  if (walk.edits === edits) walk.dirty = false
}
