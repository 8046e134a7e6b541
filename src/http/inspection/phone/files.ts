import type { InspectionFile, InspectionRules } from '../file.ts'

/** What the worker answers from where there is no network. Filled here too: the first page comes before its worker. */
export const PAGES = 'asfound-pages'
export const ASSETS = 'asfound-assets'

/** Longer than a weak signal needs and shorter than a person waits. */
const PATIENCE_MS = 8_000

/** From the network while it answers, else as it was last kept. */
async function textOf(address: string): Promise<string> {
  try {
    const response = await fetch(address, { signal: AbortSignal.timeout(PATIENCE_MS) })
    if (response.ok) return await response.text()
    if (response.status === 401) throw new Error('signed out')
  } catch {
    // Kept below, if it is kept at all.
  }
  const kept = await caches.match(address)
  if (!kept) throw new Error(`${address} is neither on the network nor on this phone`)
  return kept.text()
}

/** As it was last kept, at once; for what never changes under its address, the end of it. */
const keptText = async (address: string): Promise<string | null> =>
  (await caches.match(address))?.text() ?? null

export const fetchFile = async (address: string): Promise<InspectionFile> =>
  JSON.parse(await textOf(address)) as InspectionFile
export const keptFile = async (address: string): Promise<InspectionFile | null> => {
  const text = await keptText(address)
  return text === null ? null : (JSON.parse(text) as InspectionFile)
}
export const fetchRules = async (address: string): Promise<InspectionRules> =>
  JSON.parse((await keptText(address)) ?? (await textOf(address))) as InspectionRules

/**
 * Puts by all that this inspection needs without a network: its pages, its file and rules, what the page itself loaded, and
 * what the list of inspections will.
 */
export async function putBy(addresses: readonly string[], further: readonly string[] = []): Promise<void> {
  const [pages, assets] = await Promise.all([caches.open(PAGES), caches.open(ASSETS)])
  const loaded = performance
    .getEntriesByType('resource')
    .map(({ name }) => new URL(name))
    .filter(({ origin, pathname }) => origin === location.origin && pathname.startsWith('/assets/'))
    .map(({ pathname }) => pathname)
  await Promise.all([
    ...addresses.map((address) => put(pages, address)),
    ...[...new Set([...loaded, ...further])].map(
      async (address) => (await assets.match(address)) ?? put(assets, address),
    ),
  ])
}

async function put(cache: Cache, address: string): Promise<void> {
  const response = await fetch(address).catch(() => null)
  if (response?.ok && !response.redirected) await cache.put(address, response)
}
