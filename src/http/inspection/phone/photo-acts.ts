import { paintKept } from './paint.ts'
import { componentShown, send } from './sending.ts'
import { dropShot, relistShots, takeShot } from './shots.ts'
import type { Walk } from './walk.ts'

/** Taking a photo, and taking one away. */
export function listenToPhotos(walk: Walk): void {
  const { root } = walk
  root.addEventListener('change', ({ target }) => {
    const input = target as HTMLInputElement
    if (input.id === 'photo' && input.files && input.files.length > 0) void take(walk, input)
  })
  root.addEventListener('click', ({ target }) => {
    const at = target as HTMLElement
    const id = at.closest<HTMLElement>('[data-photo]')?.dataset.photo
    if (id !== undefined && at.matches('button.drop')) void drop(walk, id)
  })
}

async function take(walk: Walk, input: HTMLInputElement): Promise<void> {
  const component = componentShown(walk)
  const keepPlace =
    walk.root.querySelector<HTMLInputElement>('[form="photo-form"][name="keepPlace"]')?.checked ?? false
  const files = [...(input.files ?? [])]
  input.value = ''
  const faults: string[] = []
  for (const file of files) {
    const fault = await takeShot(walk, file, component, keepPlace)
    if (fault) faults.push(fault)
  }
  tell(walk, faults.join(' '))
  relistShots(walk, component)
  paintKept(walk)
  void send(walk)
}

/** One that is only here goes at once; one that was sent is taken off the draft, which needs signal. */
async function drop(walk: Walk, id: string): Promise<void> {
  if (!confirm('Remove this photo?')) return
  const component = componentShown(walk)
  if (walk.shots.some((shot) => shot.id === id)) await dropShot(walk, id)
  else {
    const path = `/v1/counties/${encodeURIComponent(walk.inspection.county)}/photos/${id}`
    const gone = await fetch(path, { method: 'DELETE', signal: AbortSignal.timeout(15_000) }).catch(
      () => null,
    )
    if (!gone || (!gone.ok && gone.status !== 404))
      return tell(
        walk,
        'The photo was already sent, so it is not removed yet. Try again when you have signal.',
      )
    walk.sent = walk.sent.filter((photo) => photo.id !== id)
  }
  tell(walk, '')
  relistShots(walk, component)
  paintKept(walk)
}

function tell(walk: Walk, says: string): void {
  const slot = walk.root.querySelector<HTMLElement>('#photo-fault')
  if (!slot) return
  slot.hidden = says === ''
  slot.textContent = says
}
