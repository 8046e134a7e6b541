import { photoPath } from '../addresses.ts'
import { nameOf } from '../sending/kept-inspection.ts'
import { momentInWords } from '../view/moment.ts'
import { flush } from './keep.ts'
import { keptInspection } from './kept.ts'
import { sendOthers } from './other-inspections.ts'
import { paint, paintKept } from './paint.ts'
import { sendInspection } from './send.ts'
import { loadShots, relistShots } from './shots.ts'
import { tellingOf, type Walk } from './walk.ts'

const AGAIN_MS = 20_000

/** Tries when there is something to send and a reason to think that it may go: signal, a look at the page, some time. */
export function keepSending(walk: Walk): void {
  addEventListener('online', () => void send(walk))
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void comeBack(walk)
  })
  setInterval(() => {
    if (document.visibilityState === 'visible') void send(walk)
  }, AGAIN_MS)
}

/** Another tab may have gone on with the inspection meanwhile. */
async function comeBack(walk: Walk): Promise<void> {
  const kept = await keptInspection(nameOf(walk.inspection))
  if (kept && !walk.dirty && kept.change !== walk.inspection.change) {
    walk.inspection = kept
    walk.form = kept.form
    paint(walk)
  }
  await send(walk)
}

/** Sends what waits. Nobody waits for it: what it changes shows when it has. */
export async function send(walk: Walk): Promise<void> {
  // Whether a form can be read is known by the reckoning alone.
  const { reckoning } = walk
  if (!reckoning) return
  await flush(walk)
  const before = stateOf(walk)
  walk.going = 'sending'
  const round = await sendInspection(nameOf(walk.inspection), {
    telling: tellingOf(walk),
    readable: ({ form }) => reckoning.readForm(form).record !== null,
    onStep: (inspection) => {
      if (inspection.change >= walk.inspection.change) walk.inspection = inspection
      paintKept(walk)
    },
    onPhoto: async (photo, sent) => {
      if (sent) {
        const src = photoPath(walk.inspection.county, sent, true)
        walk.sent = [
          ...walk.sent,
          { id: sent, component: photo.component, src, taken: momentInWords(photo.takenAt), says: 'sent' },
        ]
      }
      await loadShots(walk)
      relistShots(walk, componentShown(walk))
      paintKept(walk)
    },
  }).catch(() => 'no-signal' as const)
  walk.going = round === 'no-signal' ? 'no-signal' : 'idle'
  await loadShots(walk)
  await takeOver(walk)
  if (stateOf(walk) === before) paintKept(walk)
  else paint(walk)
  if (round === 'no-signal') return
  await sendOthers(reckoning, walk.inspection.account, nameOf(walk.inspection), () => undefined).catch(
    () => undefined,
  )
}

/** The service had another copy, and this phone nothing of its own to hold against it: what is kept is that copy now. */
async function takeOver(walk: Walk): Promise<void> {
  const kept = await keptInspection(nameOf(walk.inspection))
  if (!kept || walk.dirty || kept.change !== walk.inspection.change) return
  const isElse = JSON.stringify(kept.form) !== JSON.stringify(walk.form)
  walk.inspection = kept
  if (!isElse) return
  walk.form = kept.form
  paint(walk)
}

/** The name in the photos' form: whose photos the list shows. */
export const componentShown = ({ root }: Walk): string | null =>
  root.querySelector<HTMLInputElement>('[form="photo-form"][name="component"]')?.value || null

/** What a whole page depends on: a form, two copies, on its way, done. */
const stateOf = ({ inspection }: Walk): string =>
  [
    inspection.other !== null,
    inspection.done !== null,
    inspection.handIn,
    inspection.request?.what === 'hand-in',
    inspection.trouble?.kind ?? '',
  ].join()
