import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { accessFaults, DESK, overflow, PHONE } from './browser.ts'

/** A desk's 1,280 pixels at 200 % and at 400 % (WCAG 2.2, 1.4.4 and 1.4.10). */
const ENLARGED = [
  ['200 %', 640],
  ['400 %', 320],
] as const

/** Opens everything that opens, so that what is folded away is looked at too. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate('document.querySelectorAll("details").forEach((it) => { it.open = true })')

/** What stands outside the window, but for drawings and tables, which may scroll by themselves. */
const lost = (page: Page) =>
  page.evaluate<
    readonly string[]
  >(`[...document.querySelectorAll('main :is(p, li, h1, h2, h3, button, input)')]
    .filter((it) => { const box = it.getBoundingClientRect(); return box.width > 0 && (box.left < -1 || box.right > innerWidth + 1) && !it.closest('.drawing, .scroll') })
    .map((it) => it.outerHTML.slice(0, 80))`)

/** Nothing for axe to find on a phone, at a desk and in the dark; nothing too wide there; nothing lost enlarged. */
export async function looksRight(page: Page, what: string): Promise<void> {
  await unfold(page)
  for (const [where, size] of [
    ['on a phone', PHONE],
    ['at a desk', DESK],
  ] as const) {
    await page.setViewportSize(size)
    expect(await accessFaults(page), `${what}, ${where}`).toEqual([])
    expect(await overflow(page), `${what}, ${where}`).toBeLessThanOrEqual(0)
  }
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await accessFaults(page, ['color-contrast']), `${what}, in the dark`).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
  for (const [enlarged, width] of ENLARGED) {
    await page.setViewportSize({ width, height: 500 })
    expect(await overflow(page), `${what}, ${enlarged}`).toBeLessThanOrEqual(0)
    expect(await lost(page), `${what}, ${enlarged}`).toEqual([])
  }
  await page.setViewportSize(PHONE)
}
