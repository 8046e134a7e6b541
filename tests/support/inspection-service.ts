import type { AddressInfo } from 'node:net'
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { expect } from 'vitest'
import { must } from '../../src/base/result.ts'
import { setPassword } from '../../src/operations/access/set-password.ts'
import type { PermitEntry } from '../../src/reading/entry/permit.ts'
import { type TestApp, testApp } from './app.ts'
import { openPage, PHONE } from './browser.ts'
import { type LossyProxy, lossyProxy } from './lossy-proxy.ts'
import { newParcel } from './quillback.ts'

const NAME = 'heron.field'
const PASSWORD = 'a long and quiet river'

/** From the house outward: a sewer, a tank and its baffle, a box, a line, two pits, a well. */
const PERMIT: PermitEntry = {
  number: '74-118',
  kind: 'new',
  issuedOn: '1974-05-03',
  approvedOn: '1974-06-20',
  bedrooms: 3,
  reference: { a: 'rear left corner', b: 'rear right corner', baseline: '36 ft', wall: 'rear' },
  components: [
    { tag: 'well', kind: 'well', tie: { a: '80 ft', b: '70 ft', side: 'toward' } },
    { tag: 'pit A', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: '6 ft' },
    { tag: 'pit B', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: '6 ft' },
    { tag: 'D-box', kind: 'distribution-box' },
    { tag: 'line', kind: 'effluent-line', material: 'vitrified-clay', pipeDiameter: '4 in' },
    {
      tag: 'tank',
      kind: 'tank',
      shape: 'rectangular',
      capacity: '1,000 gal',
      material: 'concrete',
      tie: { a: '18\'-6"', b: '27\'-0"', sideWords: 'rear of house' },
    },
    { tag: 'outlet baffle', kind: 'outlet-baffle', material: 'vitrified-clay' },
    { tag: 'house sewer', kind: 'building-sewer', material: 'cast-iron' },
  ],
}

export type InspectionService = TestApp & {
  readonly proxy: LossyProxy
  /** A parcel of its own with the permit on file: its number, and where its form is. */
  readonly parcel: () => Promise<{ readonly number: string; readonly at: string }>
  /** What the firm has on a parcel. */
  // biome-ignore lint/suspicious/noExplicitAny: as the API answers
  readonly findingsOf: (number: string) => Promise<any[]>
  readonly photosOf: (
    findings: string,
  ) => Promise<readonly { readonly component: string | null; readonly takenAt: string }[]>
}

/** The service, listening behind a signal that can be made weak, with a firm's account that signs in. */
export async function inspectionService(): Promise<InspectionService> {
  const made = await testApp({ settings: { ANSWERS: 'fast' } })
  const { services, people, app, ask } = made
  must(await setPassword(services.database, { account: people.firm.account, name: NAME, password: PASSWORD }))
  await app.listen({ host: '127.0.0.1', port: 0 })
  const proxy = await lossyProxy(`http://127.0.0.1:${(app.server.address() as AddressInfo).port}`)
  const api = '/v1/counties/quillback'
  return {
    ...made,
    proxy,
    parcel: async () => {
      const { number } = await newParcel(services)
      const entered = await ask('reviewer', {
        method: 'POST',
        url: `${api}/parcels/${number}/permits`,
        body: PERMIT,
      })
      expect(entered.status).toBe(201)
      return { number, at: `${proxy.origin}/counties/quillback/parcels/${number}/inspection` }
    },
    findingsOf: async (number) =>
      (await ask('firm', { url: `${api}/parcels/${number}/findings` })).body.items,
    photosOf: async (findings) =>
      (await ask('firm', { url: `${api}/findings/${findings}/photos` })).body.items,
  }
}

export const HAND: BrowserContextOptions = { viewport: PHONE, hasTouch: true, isMobile: true }

/** The session that somebody of this test file signed in to; a browser of its own may go on with it. */
let session: Awaited<ReturnType<BrowserContext['cookies']>> = []

/** A phone in a hand, signed in, at a parcel's form. */
export async function phoneAt(at: string, options: BrowserContextOptions = HAND) {
  const opened = await openPage(options)
  await opened.context.addCookies(session)
  await opened.page.goto(at)
  if (opened.page.url() !== at) {
    // Nobody has signed in yet, or somebody signed out.
    await signInHere(opened.page, at)
    session = await opened.context.cookies()
  }
  return opened
}

export async function signInAt(page: Page, at: string): Promise<void> {
  await page.goto(at)
  await signInHere(page, at)
}

async function signInHere(page: Page, at: string): Promise<void> {
  await page.locator('[name="name"]').fill(NAME)
  await page.locator('[name="password"]').fill(PASSWORD)
  await page.keyboard.press('Enter')
  await page.waitForURL(at)
}

/** The phone's own form has taken over, and its floors have spoken. */
export async function ready(page: Page): Promise<void> {
  await page.locator('#inspection.on.reckons').waitFor({ timeout: 60_000 })
}

/** What has to come true in a while: the machine may be busy with other things. */
export const soon = <T>(ask: () => T | Promise<T>) => expect.poll(ask, { timeout: 60_000, interval: 150 })

export const title = (page: Page): Promise<string> =>
  page.locator('#title').evaluate((it) => [...it.childNodes].at(-1)?.textContent ?? '')

/** The text that shows in the first place of that selector. */
export const shown = (page: Page, selector: string): Promise<string> => {
  const place = page.locator(selector).first()
  // biome-ignore lint/performance/useDomNodeTextContent: the text as it shows is what is asked for
  return place.innerText()
}

/** Everything that is pressed is at least 44 px high and wide (WCAG 2.2, 2.5.5); what is smaller, in words. */
export const smallTargets = (page: Page): Promise<readonly string[]> =>
  page.evaluate<
    readonly string[]
  >(`[...document.querySelectorAll('#inspection :is(button, input, select, textarea, summary, a[href], .big label, .tick)')]
    .filter((it) => !it.matches('.vh, [type=hidden], [type=radio], [type=checkbox], .file, .side input') && it.checkVisibility())
    .map((it) => [it, it.getBoundingClientRect()])
    .filter(([it, box]) => box.height < 44 && !(it.matches('a') && getComputedStyle(it).display === 'inline' && it.closest('p')))
    .map(([it, box]) => Math.round(box.height) + ' px: ' + it.outerHTML.slice(0, 90))`)
