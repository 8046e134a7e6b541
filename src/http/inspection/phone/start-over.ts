import { beginKept, type KeptInspection } from '../sending/kept-inspection.ts'
import { amendment } from '../sending/next-request.ts'
import { blankForm } from '../sheet/steps.ts'
import { keepInspection } from './kept.ts'
import { paint } from './paint.ts'
import { send } from './sending.ts'
import { loadShots, localIso } from './shots.ts'
import type { Walk } from './walk.ts'

/** Findings that will take the place of those that were submitted: they begin as those say. */
export async function amendHere(walk: Walk): Promise<void> {
  const findings = walk.inspection.done?.findings
  if (!findings || isWaiting(walk)) return
  const anew = fresh(walk, walk.form)
  await replace(walk, { ...anew, request: amendment(anew, findings) })
}

/** Another day, another inspection. */
export async function beginAgain(walk: Walk): Promise<void> {
  if (isWaiting(walk)) return
  walk.sent = []
  await replace(walk, fresh(walk, blankForm(walk.file.sheet, localIso(new Date()).slice(0, 10))))
}

/** Photos of the inspection before must have left first: they belong to it. */
function isWaiting(walk: Walk): boolean {
  const waiting = walk.shots.filter(({ trouble }) => trouble === null)
  if (waiting.length === 0) return false
  const kept = walk.root.querySelector('#kept')
  if (kept)
    kept.textContent = `The photos on this phone must be sent first: ${waiting.length}. They are sent when you have signal.`
  return true
}

const fresh = ({ inspection }: Walk, form: KeptInspection['form']): KeptInspection =>
  beginKept(
    { account: inspection.account, county: inspection.county, parcel: inspection.parcel, form, base: null },
    () => crypto.randomUUID(),
    new Date().toISOString(),
  )

async function replace(walk: Walk, inspection: KeptInspection): Promise<void> {
  await keepInspection(inspection)
  Object.assign(walk, {
    inspection,
    form: inspection.form,
    dirty: false,
    step: 'start',
    asks: false,
    notice: null,
  })
  walk.touched.clear()
  history.pushState(null, '', location.pathname)
  await loadShots(walk)
  paint(walk, true)
  await send(walk)
}
