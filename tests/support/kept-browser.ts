import { existsSync } from 'node:fs'
import { type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core'

const executable = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (place) => place !== undefined && place !== '' && existsSync(place),
)

/** A browser with a profile folder: closed and opened again on it, it has what it had. */
export const openKept = (folder: string, options: BrowserContextOptions): Promise<BrowserContext> =>
  chromium.launchPersistentContext(folder, {
    ...options,
    ...(executable ? { executablePath: executable } : {}),
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })
