import { isVessel } from '../../../catalog/kinds.ts'
import { confirmWords, formFaultWords } from '../../../words/form-faults.ts'
import type { Html } from '../../pages/html.ts'
import type { Faults } from '../form/read.ts'
import { kindOf } from '../form/typed.ts'
import { clashes } from '../sending/clashes.ts'
import { stepsOf } from '../sheet/steps.ts'
import { conflictView } from '../view/conflict-view.ts'
import { idOf } from '../view/field.ts'
import { sumView } from '../view/frame.ts'
import { handingView } from '../view/handing-view.ts'
import { inspectionView } from '../view/inspection-view.ts'
import { keptWords } from '../view/kept-words.ts'
import { differencesView, liveView } from '../view/live-view.ts'
import { momentInWords } from '../view/moment.ts'
import { sentView } from '../view/sent-view.ts'
import type { InspectionShown } from '../view/shown.ts'
import { SYSTEM_LEAD } from '../view/start-view.ts'
import { paintShots, photosShown } from './shots.ts'
import { faultsOfWalk, faultySteps, readWalk, reckonWalk, tellingOf, type Walk } from './walk.ts'

/**
 * Lays the whole step out anew. The focus stays where it was and what was unfolded stays so, or the focus goes to the title
 * where the step is another one.
 */
export function paint(walk: Walk, isNew = false): void {
  const { root } = walk
  const focus = document.activeElement instanceof HTMLElement ? document.activeElement : null
  const [id, name] = [focus?.id ?? '', focus?.getAttribute('name') ?? '']
  const unfolded = isNew ? [] : summariesIn(root).filter(isOpen).map(textOf)
  root.innerHTML = bodyOf(walk).text
  for (const summary of summariesIn(root))
    if (unfolded.includes(textOf(summary))) summary.parentElement!.setAttribute('open', '')
  root.classList.add('on')
  paintShots(walk)
  if (isNew) {
    scrollTo(0, 0)
    root.querySelector<HTMLElement>('#title')?.focus({ preventScroll: true })
  } else if (id || name) {
    root
      .querySelector<HTMLElement>(id ? `#${CSS.escape(id)}` : `[name="${CSS.escape(name)}"]`)
      ?.focus({ preventScroll: true })
  }
}

const summariesIn = (root: HTMLElement): readonly Element[] => [...root.querySelectorAll('details > summary')]
const isOpen = (summary: Element): boolean => summary.parentElement!.hasAttribute('open')
const textOf = (summary: Element): string => summary.textContent ?? ''

function bodyOf(walk: Walk): Html {
  const { inspection, file } = walk
  const { sheet } = file
  if (inspection.other) {
    const { base, handedIn, at } = inspection.other
    const mine = tellingOf(walk).tidy(walk.form)
    const other = `${handedIn ? 'submitted' : 'saved'} ${momentInWords(at)}`
    return conflictView({
      sheet,
      clashes: clashes(mine, base.form, inspection.base?.form ?? null),
      other,
      carried: {},
      handedIn,
    })
  }
  if (inspection.done) {
    const { differences } = reckonWalk(walk, readWalk(walk))
    const waiting = walk.shots.length
    const photos =
      waiting > 0
        ? `Photos still on this phone: ${waiting}. They are sent when you have signal.`
        : walk.sent.length > 0
          ? `Photos sent: ${walk.sent.length}.`
          : null
    return sentView({
      sheet,
      findings: inspection.done.findings,
      status: inspection.done.status,
      differences,
      photos,
    })
  }
  if (inspection.handIn) {
    const left = inspection.request?.what === 'hand-in'
    return handingView({ sheet, kept: keptNow(walk), left, trouble: inspection.trouble?.says ?? null })
  }
  return inspectionView(shownOf(walk))
}

function shownOf(walk: Walk): InspectionShown {
  const { file, inspection, form, step, asks, notice } = walk
  const read = readWalk(walk)
  return {
    sheet: file.sheet,
    form,
    step,
    faults: faultsOfWalk(walk, read),
    ...reckonWalk(walk, read),
    draft: inspection.base,
    photos: photosShown(walk),
    kept: keptNow(walk),
    notice,
    asks,
  }
}

const keptNow = (walk: Walk): string =>
  keptWords(
    walk.inspection,
    navigator.onLine ? walk.going : 'no-signal',
    faultySteps(walk, readWalk(walk).faults),
    walk.shots.length,
  )

/** What changes while somebody types: faults, numbers, where it is kept. The fields themselves are left alone. */
export function paintLive(walk: Walk): void {
  const { root, inspection, step, form, file } = walk
  paintKept(walk)
  if (inspection.other || inspection.done || inspection.handIn) return
  const read = readWalk(walk)
  const { live, differences } = reckonWalk(walk, read)
  const part = stepsOf(file.sheet, form).find(({ name }) => name === step)
  const recorded =
    part?.is === 'part' && isVessel(kindOf(part.part)) ? (part.recorded?.onRecord.capacity ?? null) : null
  const says =
    step === 'review'
      ? (differencesView(differences)?.text ?? '<p class="soft">Nothing, as far as it can be told.</p>')
      : liveView(live, recorded, ...(part?.is === 'part' ? [] : [SYSTEM_LEAD])).text
  put(root.querySelector('#live'), says)
  put(root.querySelector('#sum'), sumView(step === 'review' ? { ...live, differences } : live)?.text ?? '')
  paintFaults(root, step, faultsOfWalk(walk, read)[step] ?? {})
}

export function paintKept(walk: Walk): void {
  const kept = walk.root.querySelector('#kept')
  if (!kept || walk.inspection.done) return
  const words = keptNow(walk)
  if (kept.textContent !== words) kept.textContent = words
}

function paintFaults(root: HTMLElement, step: string, faults: Faults[string]): void {
  if (root.querySelector('form.step')?.getAttribute('data-step') !== step) return
  paintTicks(root, faults)
  const ids = new Map(
    Object.entries(faults).map(([field, fault]) => [`${idOf(field)}-fault`, formFaultWords(fault)]),
  )
  for (const slot of root.querySelectorAll<HTMLElement>('p.fault[id]')) {
    const says = ids.get(slot.id)
    if (slot.id === 'photo-fault') continue
    slot.hidden = says === undefined
    if (slot.textContent !== (says ?? '')) slot.textContent = says ?? ''
    const field = root.querySelector(`#${slot.id.slice(0, -'-fault'.length)}`)
    if (says === undefined) {
      field?.removeAttribute('aria-invalid')
      field?.removeAttribute('aria-describedby')
    } else {
      field?.setAttribute('aria-invalid', 'true')
      field?.setAttribute('aria-describedby', slot.id)
    }
  }
}

/** The box beside a question: there while the value is asked about, and while its tick holds. */
function paintTicks(root: HTMLElement, faults: Faults[string]): void {
  for (const label of root.querySelectorAll<HTMLElement>('label.meant')) {
    const box = label.querySelector('input')
    if (!box) continue
    const fault = faults[box.name.slice(0, -'.checked'.length)]
    const field = root.querySelector<HTMLInputElement>(`#${label.id.slice(0, -'-meant'.length)}`)
    if (fault?.why === 'unusual') {
      box.value = fault.written
      box.checked = false
      const says = confirmWords(fault.written)
      const words = label.querySelector('span')
      if (words && words.textContent !== says) words.textContent = says
      label.hidden = false
    } else if (!box.checked || field?.value.trim() !== box.value) {
      box.checked = false
      label.hidden = true
    }
  }
}

/** Only what has changed: a live region that is written again is read out again. */
function put(place: Element | null, markup: string): void {
  if (!place || place.getAttribute('data-says') === markup) return
  place.innerHTML = markup
  place.setAttribute('data-says', markup)
}
