import { briefPath, inspectionsPath } from '../../pages/layout/addresses.ts'
import { inspectionPath } from '../addresses.ts'
import { bookOf, type InspectionFile } from '../file.ts'
import { answersIn, withStep } from '../form/with-step.ts'
import { changed, type KeptInspection, nameOf } from '../sending/kept-inspection.ts'
import { meet, newKept } from '../sending/meet.ts'
import { listen } from './acts.ts'
import { fetchFile, fetchRules, keptFile, putBy } from './files.ts'
import { changeInspection, keepInspection, keptInspection } from './kept.ts'
import { offerLengthKeys } from './length-keys.ts'
import { paint, paintLive } from './paint.ts'
import { keepSending, send } from './sending.ts'
import { loadShots, localIso } from './shots.ts'
import { forgetPagesAtSignOut } from './sign-out.ts'
import { stepInAddress } from './step.ts'
import { tellingOf, type Walk } from './walk.ts'

const root = document.querySelector<HTMLElement>('#inspection')
const address = root?.dataset.file

// Without these there is nothing to keep an inspection in; the plain form goes on working.
if (root && address && isSecureContext && 'indexedDB' in window && 'locks' in navigator) {
  void begin(root, address)
}

const today = (): string => localIso(new Date()).slice(0, 10)
const now = (): string => new Date().toISOString()

async function begin(place: HTMLElement, fileAddress: string): Promise<void> {
  const kept = await keptFile(fileAddress)
  // A phone that somebody else signed in on keeps the other's file until it has this one's.
  const own = kept?.account === place.dataset.account ? kept : null
  const file = own ?? (await fetchFile(fileAddress))
  const walk = await walkWith(place, file)
  await typedBefore(walk)
  paint(walk)
  listen(walk)
  offerLengthKeys(place)
  forgetPagesAtSignOut()
  keepSending(walk)
  void navigator.storage?.persist?.()
  void navigator.serviceWorker
    ?.register('/inspection-worker.js', { scope: '/counties/' })
    .catch(() => undefined)
  await bringReckoning(walk)
  await bringFresh(walk, fileAddress, own !== null)
}

async function walkWith(place: HTMLElement, file: InspectionFile): Promise<Walk> {
  const { account, sheet } = file
  const name = nameOf({ account, county: sheet.county, parcel: sheet.parcel })
  let inspection: KeptInspection | undefined = await keptInspection(name)
  if (!inspection) {
    inspection = newKept(file, today(), () => crypto.randomUUID(), now())
    await keepInspection(inspection)
  }
  const walk: Walk = {
    root: place,
    file,
    inspection,
    form: inspection.form,
    dirty: false,
    edits: 0,
    step: stepInAddress(),
    reckoning: null,
    book: null,
    going: 'idle',
    shots: [],
    sent: file.photos,
    touched: new Set(),
    warned: '',
    asks: false,
    reviewed: stepInAddress() === 'review',
    notice: null,
  }
  await loadShots(walk)
  return walk
}

/** What was typed into the plain form while this was still on its way. */
async function typedBefore(walk: Walk): Promise<void> {
  const form = walk.root.querySelector<HTMLFormElement>('form.step')
  if (!form || form.id === 'clashes' || walk.inspection.done || walk.inspection.other) return
  const isTyped = [...form.elements].some(
    (it) =>
      (it instanceof HTMLInputElement &&
        (it.value !== it.defaultValue || it.checked !== it.defaultChecked)) ||
      (it instanceof HTMLTextAreaElement && it.value !== it.defaultValue),
  )
  if (!isTyped) return
  const sent = [...new FormData(form)].flatMap(([name, text]) =>
    typeof text === 'string' ? [[name, text] as const] : [],
  )
  const step = form.dataset.step ?? walk.step
  walk.form = withStep(walk.form, walk.file.sheet, step, answersIn(sent))
  const kept = await changeInspection(nameOf(walk.inspection), (it) => changed(it, walk.form, now()))
  if (kept) walk.inspection = kept
}

/** The reckoning and the rules: with them come the faults and the numbers, and nothing waits for them. */
async function bringReckoning(walk: Walk): Promise<void> {
  const [reckoning, rules] = await Promise.allSettled([import('./reckoning.ts'), fetchRules(walk.file.rules)])
  if (reckoning.status === 'fulfilled') walk.reckoning = reckoning.value
  if (rules.status === 'fulfilled') walk.book = bookOf(rules.value)
  walk.root.classList.toggle('reckons', walk.reckoning !== null && walk.book !== null)
  paintLive(walk)
}

/** Kept things come back as copies: it is what they say that counts. */
const saysElse = (a: KeptInspection, b: KeptInspection): boolean =>
  JSON.stringify([a.form, a.other]) !== JSON.stringify([b.form, b.other])

/** What this phone submitted is behind it once a draft was begun after it: an amendment, or another day's inspection. */
async function goOnWith(walk: Walk, fresh: InspectionFile): Promise<void> {
  const { inspection, shots } = walk
  const isWaiting = shots.some(({ trouble }) => trouble === null)
  if (!inspection.done || !fresh.draft || fresh.draft.id === inspection.done.findings || isWaiting) return
  walk.inspection = newKept(fresh, today(), () => crypto.randomUUID(), now())
  walk.form = walk.inspection.form
  walk.step = 'start'
  history.replaceState(null, '', location.pathname)
  await keepInspection(walk.inspection)
  paint(walk, true)
}

/** Meets what the service has now, puts by what a day without signal needs, and sends what waits. */
async function bringFresh(walk: Walk, fileAddress: string, wasKept: boolean): Promise<void> {
  const fresh = wasKept ? await fetchFile(fileAddress).catch(() => null) : walk.file
  const { county, parcel } = walk.file.sheet
  if (fresh && fresh.account === walk.file.account) {
    const rulesMoved = fresh.rules !== walk.file.rules
    const isNews =
      JSON.stringify([fresh.sheet, fresh.photos]) !== JSON.stringify([walk.file.sheet, walk.file.photos])
    walk.file = fresh
    walk.sent = fresh.photos
    if (rulesMoved) walk.book = bookOf(await fetchRules(fresh.rules).catch(() => fetchRules(walk.file.rules)))
    await goOnWith(walk, fresh)
    const met = await changeInspection(nameOf(walk.inspection), (it) => meet(it, fresh, tellingOf(walk)))
    if (met && !walk.dirty) {
      const isMoved = saysElse(met, walk.inspection)
      walk.inspection = met
      walk.form = met.form
      if (isMoved || isNews) paint(walk)
    }
    const list = walk.root.dataset.list
    await putBy(
      [
        inspectionPath(county, parcel.number),
        fileAddress,
        fresh.rules,
        briefPath(county, parcel.number),
        inspectionsPath(county),
      ],
      list ? [list] : [],
    ).catch(() => undefined)
  }
  await send(walk)
}
