/** On the list of inspections: what waits on this phone, and its sending. The list itself is the service's. */
import { html } from '../../pages/html.ts'
import { inspectionPath, numberShown } from '../addresses.ts'
import { type Going, keptWords } from '../view/kept-words.ts'
import { putBy } from './files.ts'
import { sendOthers, waitingInspections } from './other-inspections.ts'
import { forgetPagesAtSignOut } from './sign-out.ts'

const AGAIN_MS = 20_000
const place = document.querySelector<HTMLElement>('#on-this-phone')
const account = place?.dataset.account

if (place && account && isSecureContext && 'indexedDB' in window && 'locks' in navigator)
  void begin(place, account)

async function begin(list: HTMLElement, whose: string): Promise<void> {
  void navigator.serviceWorker
    ?.register('/inspection-worker.js', { scope: '/counties/' })
    .catch(() => undefined)
  void putBy([location.pathname]).catch(() => undefined)
  forgetPagesAtSignOut()
  addEventListener('online', () => void send(list, whose))
  setInterval(() => {
    if (document.visibilityState === 'visible') void send(list, whose)
  }, AGAIN_MS)
  await show(list, whose, 'idle')
  await send(list, whose)
}

async function send(list: HTMLElement, whose: string): Promise<void> {
  if ((await waitingInspections(whose)).length === 0) return
  try {
    const reckoning = await import('./reckoning.ts')
    await sendOthers(reckoning, whose, null, () => void show(list, whose, 'sending'))
  } catch {
    // Shown below as what it is: still here.
  }
  await show(list, whose, navigator.onLine ? 'idle' : 'no-signal')
}

async function show(list: HTMLElement, whose: string, going: Going): Promise<void> {
  const waiting = await waitingInspections(whose)
  const lines = waiting.map(
    ({ inspection, photos }) =>
      html`
        <li>
          <a href="${inspectionPath(inspection.county, inspection.parcel.number)}">
            <span class="number">${numberShown(inspection.parcel)}</span> ${inspection.parcel.address}
          </a> <span class="soft">${keptWords(inspection, going, [], photos)}</span>
        </li>
      `,
  )
  const says =
    waiting.length === 0 ? '' : html`<h2>On this phone, not sent yet</h2><ul class="hits">${lines}</ul>`.text
  if (list.innerHTML !== says) list.innerHTML = says
}
