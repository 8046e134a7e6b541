import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { WALKED, type WalkedBy, type WalkedRoute } from './walked.ts'

/** What a page may weigh over the wire, bytes. */
export const LIGHT = 60_000

/** The page is the one of that route: nothing led elsewhere. */
export function isAt(page: Page, route: string): void {
  const { pathname } = new URL(page.url())
  expect(new URLPattern({ pathname: route }).test({ pathname }), `${pathname} is ${route}`).toBe(true)
}

/** Bytes of the page's own answer as they came, compressed. */
export const weightOf = (page: Page): Promise<number> =>
  page.evaluate('performance.getEntriesByType("navigation")[0].encodedBodySize')

/**
 * A walk along the pages that are listed for a test: each is where its route says, looked at, and light. `left` are the
 * routes that were not walked yet.
 */
export function walkOf<By extends WalkedBy>(by: By) {
  const left = new Set<string>(WALKED[by])
  return {
    left,
    walk: async (
      page: Page,
      route: WalkedRoute<By>,
      what: string,
      look: (page: Page, what: string) => Promise<void>,
    ): Promise<void> => {
      isAt(page, route)
      const weight = await weightOf(page)
      expect(weight, `${what}: bytes over the wire`).toBeGreaterThan(0)
      expect(weight, `${what}: bytes over the wire`).toBeLessThan(LIGHT)
      await look(page, what)
      left.delete(route)
    },
  }
}
