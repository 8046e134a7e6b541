/** On the list of visits: what waits on this phone, and its sending. The list itself is the service's. */
import { html } from '../../pages/html.ts'
import { visitPath } from '../../pages/visit/addresses.ts'
import { type Going, keptWords } from '../../pages/visit/view/kept-words.ts'
import { putBy } from './files.ts'
import { sendOthers, waitingVisits } from './other-visits.ts'
import { forgetPagesAtSignOut } from './sign-out.ts'

const AGAIN_MS = 20_000
const place = document.querySelector<HTMLElement>('#on-this-phone')
const account = place?.dataset.account

if (place && account && isSecureContext && 'indexedDB' in window && 'locks' in navigator)
  void begin(place, account)

async function begin(list: HTMLElement, whose: string): Promise<void> {
  void navigator.serviceWorker?.register('/visit-worker.js', { scope: '/counties/' }).catch(() => undefined)
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
  if ((await waitingVisits(whose)).length === 0) return
  try {
    const floors = await import('./floors.ts')
    await sendOthers(floors, whose, null, () => void show(list, whose, 'sending'))
  } catch {
    // Shown below as what it is: still here.
  }
  await show(list, whose, navigator.onLine ? 'idle' : 'no-signal')
}

async function show(list: HTMLElement, whose: string, going: Going): Promise<void> {
  const waiting = await waitingVisits(whose)
  const lines = waiting.map(
    ({ visit, photos }) =>
      html`<li><a href="${visitPath(visit.county, visit.parcel.number)}"><span class="number">${visit.parcel.number}</span> ${visit.parcel.address}</a> <span class="soft">${keptWords(visit, going, [], photos)}</span></li>`,
  )
  const says =
    waiting.length === 0 ? '' : html`<h2>On this phone, not sent yet</h2><ul class="hits">${lines}</ul>`.text
  if (list.innerHTML !== says) list.innerHTML = says
}
