import { existsSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core'
import { afterAll, describe } from 'vitest'

/** Where a Chromium may be: named by CHROMIUM, else as Debian and others install it. */
const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]
const executable = PLACES.find((place) => place !== undefined && place !== '' && existsSync(place))

const HOW = 'install Chromium (Debian: apt-get install chromium) or name one by CHROMIUM=/path/to/it'
if (!executable && process.env.REQUIRE_BROWSER === '1') {
  throw new Error(`REQUIRE_BROWSER=1, and no browser was found: ${HOW}`)
}

/**
 * A block of tests in a real browser. Without one it is left out, and says so by name and how to get one; with
 * REQUIRE_BROWSER=1 its absence is a failure, so that a CI job can't leave it out unseen.
 */
export const inBrowser: typeof describe | typeof describe.skip = executable
  ? describe
  : (((name: string, ...rest: never[]) => {
      process.stderr.write(`Left out, no browser was found: ${name}. To run it, ${HOW}.\n`)
      return (describe.skip as (name: string, ...rest: never[]) => void)(name, ...rest)
    }) as typeof describe.skip)

/** Nothing that looks for the outside: no updates, no sync, no first-run pages. */
const QUIET = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

let opened: Promise<Browser> | undefined

/** The browser of this test file, opened once and closed after it. */
export function openBrowser(): Promise<Browser> {
  opened ??= chromium.launch({ ...(executable ? { executablePath: executable } : {}), args: QUIET })
  return opened
}
afterAll(async () => {
  await (await opened)?.close()
  opened = undefined
})

export const PHONE = { width: 390, height: 844 }
export const DESK = { width: 1280, height: 900 }

/** A new page of its own, with faults of the page's scripts and of its policy collected. */
export async function openPage(
  options: BrowserContextOptions,
): Promise<{ readonly page: Page; readonly context: BrowserContext; readonly faults: readonly string[] }> {
  const context = await (await openBrowser()).newContext(options)
  context.setDefaultTimeout(20_000)
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', (fault) => faults.push(String(fault)))
  page.on('console', (message) => {
    if (message.type() === 'error' && !/the server responded with a status of/.test(message.text()))
      faults.push(message.text())
  })
  return { page, context, faults }
}

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe finds against WCAG 2.2 level AA and its own good practice (or only some of its rules), in words. */
export async function accessFaults(page: Page, only: readonly string[] = []): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true)
  const { violations } = await (only.length > 0 ? axe.withRules([...only]) : axe.withTags(LEVELS)).analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary}`),
  )
}

/** Pixels by which the page is wider than its window: more than none, and one has to scroll in two directions. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')

/** A folder for what a test leaves behind, removed after the file. */
export async function scratchFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'asfound-browser-'))
  afterAll(() => rm(folder, { recursive: true, force: true }))
  return folder
}
