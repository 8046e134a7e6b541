import { formFaultWords } from '../../../words/form-faults.ts'
import { inspectionPath } from '../addresses.ts'
import { withoutPart } from '../form/typed.ts'
import { answersIn, withAdded, withStep } from '../form/with-step.ts'
import { changed, nameOf } from '../sending/kept-inspection.ts'
import { settle } from '../sending/meet.ts'
import { neighbors, stepsOf } from '../sheet/steps.ts'
import { afterPress } from './after-press.ts'
import { edited, flush, keepSoon } from './keep.ts'
import { changeInspection } from './kept.ts'
import { locate } from './locate.ts'
import { paint, paintLive } from './paint.ts'
import { listenToPhotos } from './photo-acts.ts'
import { send } from './sending.ts'
import { amendHere, beginAgain } from './start-over.ts'
import { stepInAddress } from './step.ts'
import { readWalk, tellingOf, unsaidInWalk, type Walk } from './walk.ts'

/** Everything that a person can do on a step. The form itself never leaves the page: what it would post is done here. */
export function listen(walk: Walk): void {
  const { root } = walk
  root.addEventListener('input', ({ target }) => typed(walk, target as HTMLElement))
  root.addEventListener('change', ({ target }) => left(walk, target as HTMLElement))
  root.addEventListener('focusout', ({ target }) => left(walk, target as HTMLElement))
  root.addEventListener('submit', (event) => {
    if ((event.target as HTMLElement).id === 'photo-form') return event.preventDefault()
    event.preventDefault()
    const to = (event.submitter as HTMLButtonElement | null)?.value || 'next'
    void act(walk, event.target as HTMLFormElement, to)
  })
  root.addEventListener('click', (event) => {
    const at = event.target as HTMLElement
    const step = at.closest<HTMLElement>('a[data-step]')?.dataset.step
    if (step !== undefined && !event.ctrlKey && !event.metaKey) {
      event.preventDefault()
      void go(walk, step)
    } else if (at.dataset.locate !== undefined) void placeByPhone(walk, at.dataset.locate)
  })
  listenToPhotos(walk)
  addEventListener('popstate', () => void go(walk, stepInAddress(), false))
  addEventListener('pagehide', () => void flush(walk))
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void flush(walk)
  })
}

const stepForm = ({ root }: Walk): HTMLFormElement | null => root.querySelector('form.step[data-step]')

function typed(walk: Walk, target: HTMLElement): void {
  const form = target.closest<HTMLFormElement>('form.step[data-step]')
  // A photo's own fields stand among the others and belong to another form.
  if (!form || (target as HTMLInputElement).form !== form) return
  const answers = answersIn(
    [...new FormData(form)].flatMap(([name, text]) =>
      typeof text === 'string' ? [[name, text] as const] : [],
    ),
  )
  walk.form = withStep(walk.form, walk.file.sheet, walk.step, answers)
  keepSoon(walk, () => paintLive(walk))
  // Of another kind something else is asked.
  if (target.id === 'f-kind') paint(walk)
}

/** A field that was left shows its fault; one that is still being typed in does not, unless it did already. */
function left(walk: Walk, target: HTMLElement): void {
  const name = target.getAttribute('name')
  if (!name || !target.closest('form.step[data-step]')) return
  const field = name.replace(/\.(?:how|side|checked)$/, '').replace(/^searchedBy\..*/, 'searchedBy')
  if (name === 'outcome' && (target as HTMLInputElement).checked)
    walk.touched.delete(`${walk.step}/searchedBy`)
  if (walk.touched.has(`${walk.step}/${field}`)) return
  walk.touched.add(`${walk.step}/${field}`)
  afterPress(() => paintLive(walk))
}

export async function go(walk: Walk, step: string, push = true): Promise<void> {
  await flush(walk)
  const { county, parcel } = walk.file.sheet
  if (push && step !== walk.step) history.pushState(null, '', inspectionPath(county, parcel.number, step))
  Object.assign(walk, { step, asks: false, notice: null, reviewed: walk.reviewed || step === 'review' })
  paint(walk, true)
  void send(walk)
}

async function act(walk: Walk, form: HTMLFormElement, to: string): Promise<void> {
  await flush(walk)
  if (form.id === 'clashes') return settleHere(walk, form, to)
  const { sheet } = walk.file
  const steps = stepsOf(sheet, walk.form)
  const { back, next } = neighbors(steps, walk.step)
  switch (to) {
    case 'back':
      return go(walk, back ?? 'start')
    case 'add':
      return add(walk, form)
    case 'remove':
      Object.assign(walk, { asks: true, notice: 'Remove it and everything noted about it?' })
      return paint(walk)
    case 'remove-sure':
      walk.form = withoutPart(walk.form, walk.step)
      edited(walk)
      return go(walk, 'more')
    case 'unhand':
      return unhand(walk)
    case 'amend':
      return amendHere(walk)
    case 'again':
      return beginAgain(walk)
    default:
      if (!mayGoOn(walk)) return
      return walk.step === 'review' ? handIn(walk) : go(walk, next ?? 'review')
  }
}

/** The first press shows what is wrong here; the second goes on, for the inspection is kept whatever it says. */
function mayGoOn(walk: Walk): boolean {
  const faults = readWalk(walk).faults[walk.step] ?? {}
  const warning = `${walk.step} ${JSON.stringify(faults)}`
  if (Object.keys(faults).length === 0 || walk.warned === warning) return true
  walk.warned = warning
  for (const field of Object.keys(faults)) walk.touched.add(`${walk.step}/${field}`)
  paintLive(walk)
  const slot = walk.root.querySelector<HTMLElement>('p.fault:not([hidden])')
  const field = slot?.parentElement?.querySelector<HTMLElement>(
    'input:not([type="hidden"], .meant input), select, textarea',
  )
  field?.focus()
  return false
}

function add(walk: Walk, form: HTMLFormElement): Promise<void> | void {
  const data = new FormData(form)
  const said = (name: string): string => String(data.get(name) ?? '')
  const added = withAdded(walk.form, walk.file.sheet, {
    newKind: said('newKind'),
    newName: said('newName'),
    newKey: said('newKey'),
  })
  if ('fault' in added) {
    walk.notice = `To add something, ${formFaultWords(added.fault)}.`
    return paint(walk)
  }
  walk.form = added.form
  edited(walk)
  return go(walk, added.step)
}

async function handIn(walk: Walk): Promise<void> {
  const read = readWalk(walk)
  const { faults, record } = read
  if (Object.keys(unsaidInWalk(walk, read)).length > 0) {
    walk.notice = 'Say what is listed here first.'
    return paint(walk, true)
  }
  if (walk.reckoning && record === null) {
    walk.notice = Object.keys(faults).length > 0 ? 'Fix what is listed here first.' : null
    return paint(walk, true)
  }
  await change(walk, (it) => ({ ...changed(it, walk.form, new Date().toISOString()), handIn: true }))
  paint(walk, true)
  await send(walk)
}

/** While it has not left, it can be had back. */
async function unhand(walk: Walk): Promise<void> {
  await change(walk, (it) => (it.request?.what === 'hand-in' || it.done ? it : { ...it, handIn: false }))
  paint(walk, true)
}

async function settleHere(walk: Walk, form: HTMLFormElement, to: string): Promise<void> {
  const data = new FormData(form)
  const chosen = (clash: string) =>
    to !== 'keep-theirs' && data.get(`keep:${clash}`) === 'mine' ? ('mine' as const) : ('theirs' as const)
  await change(walk, (it) => settle(it, chosen, tellingOf(walk), new Date().toISOString()))
  walk.form = walk.inspection.form
  paint(walk, true)
  await send(walk)
}

async function change(walk: Walk, how: Parameters<typeof changeInspection>[1]): Promise<void> {
  const kept = await changeInspection(nameOf(walk.inspection), how)
  if (kept) walk.inspection = kept
}

/** The phone's own place into the fields of a part or a corner, with how sure it is. */
async function placeByPhone(walk: Walk, name: string): Promise<void> {
  const says = walk.root.querySelector(`[data-located="${CSS.escape(name)}"]`)
  if (says) says.textContent = 'Finding your location…'
  const { step } = walk
  const place = await locate()
  const form = stepForm(walk)
  if (typeof place === 'string' || !form || walk.step !== step) {
    if (says) says.textContent = typeof place === 'string' ? place : ''
    return
  }
  const fix = {
    [`${name}.lat`]: String(place.lat),
    [`${name}.lon`]: String(place.lon),
    [`${name}.radiusFt`]: String(place.radiusFt),
    [`${name}.coverage`]: '0.95',
  }
  const part = walk.form.parts.find(({ id }) => id === step)
  const typed = part ? { ...part.typed, label: part.label } : step === 'start' ? walk.form.start : null
  if (typed) {
    walk.form = withStep(walk.form, walk.file.sheet, step, { ...typed, ...fix })
    keepSoon(walk, () => paintLive(walk))
    paint(walk)
  }
}
