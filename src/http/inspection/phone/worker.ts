/** The service worker: what an inspection needs, with or without a network. Pages first from the network, assets first from here. */
import { ASSETS, PAGES } from './files.ts'

type Waiting = Event & { readonly waitUntil: (work: Promise<unknown>) => void }
type Fetching = Waiting & {
  readonly request: globalThis.Request
  readonly respondWith: (answer: Promise<Response>) => void
}
declare const self: {
  readonly location: Location
  readonly skipWaiting: () => Promise<void>
  readonly clients: { readonly claim: () => Promise<void> }
  readonly addEventListener: <T extends Event>(name: string, listener: (event: T) => void) => void
}

/** The form of a parcel, its file and its brief, the rules, the list of inspections. Nothing else is kept. */
const KEPT =
  /^\/counties\/[^/]+\/(?:inspections|inspection-rules\/[^/]+|parcels\/[^/]+\/(?:inspection|inspection\/file\.json|brief))$/
/** A page that is here already does not wait longer for a fresh one. */
const PATIENCE_MS = 3_000

self.addEventListener<Waiting>('install', (event) => event.waitUntil(self.skipWaiting()))
self.addEventListener<Waiting>('activate', (event) => event.waitUntil(self.clients.claim()))
self.addEventListener<Fetching>('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin) return
  if (pathname.startsWith('/assets/')) event.respondWith(asset(request))
  else if (KEPT.test(pathname)) event.respondWith(page(event))
})

async function asset(request: globalThis.Request): Promise<Response> {
  const cache = await caches.open(ASSETS)
  const kept = await cache.match(request)
  if (kept) return kept
  const response = await fetch(request)
  if (response.ok) await cache.put(request, response.clone())
  return response
}

async function page(event: Fetching): Promise<Response> {
  const { request } = event
  const cache = await caches.open(PAGES)
  // Every step of a form is one page here: which of them shows is the phone's own business.
  const kept = await cache.match(request, { ignoreSearch: true })
  const fresh = fetch(request).then(async (response) => {
    if (response.ok && !response.redirected && !new URL(request.url).search)
      await cache.put(request, response.clone())
    return response
  })
  if (!kept) return fresh
  event.waitUntil(fresh.catch(() => undefined))
  const late = new Promise<Response>((resolve) => setTimeout(() => resolve(kept), PATIENCE_MS))
  return Promise.race([fresh.catch(() => kept), late])
}
