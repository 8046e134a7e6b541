import type { AddressInfo } from 'node:net'
import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { type Grade, scanned } from '../../../forms/damage.ts'
import type { Paper } from '../../../forms/make.ts'
import { FAMILIES, UNSEEN, unseenPage } from '../../../forms/unseen/families.ts'
import { type Held, heldAgainst, isMarked } from '../../../forms/unseen/held.ts'
import { testApp } from '../../../support/app.ts'
import { DESK, inBrowser, openPage } from '../../../support/browser.ts'
import { wholeDocument } from '../../../support/whole-document.ts'
import { waitingOf } from './waiting.ts'

/**
 * How long a clerk needs for papers met for the first time: every value is looked at, what is wrong is typed anew, what is
 * missing is typed, key by key on the real page. Times of the operators are those of the keystroke-level model (Card, Moran,
 * Newell, "The Keystroke-Level Model for User Performance Time with Interactive Systems", CACM 23(7), 1980): a key of an
 * average typist 0.28 s, a moment of thought 1.35 s, the hand to the mouse or back 0.40 s, pointing 1.10 s; the machine's
 * own answer as long as it takes. Looking at a value and at its place on the scan is one moment of thought.
 *
 * PACE_PAPERS=20 PACE_GRADE=fair npm test -- tests/http/pages/documents/pace.test.ts
 */
const KEY = 0.28
const THOUGHT = 1.35
const MOUSE = 2 * 0.4 + 1.1
const PAPERS = Number(process.env.PACE_PAPERS ?? 2)
const GRADE = process.env.PACE_GRADE ?? 'text'
const SEED = Number(process.env.PACE_SEED ?? 7_001)
/** Twenty papers in ten minutes. */
const AIM_SECONDS = 30

vi.setConfig({ testTimeout: 60_000 + PAPERS * 30_000 })
const service = await testApp({ settings: { ANSWERS: 'fast' } })
const { app, services, people } = service
await app.listen({ host: '127.0.0.1', port: 0 })
const here = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}/counties/quillback/documents`
const single = FAMILIES.filter((name) => UNSEEN[name].permits === 1)

/** Keys pressed and moments of thought; everything that the clerk does goes through here. */
class Clerk {
  readonly page: Page
  seconds = 0
  keys = 0
  constructor(page: Page) {
    this.page = page
  }
  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key)
    const strokes = key.split('+').length
    this.keys += strokes
    this.seconds += strokes * KEY
  }
  think(times = 1): void {
    this.seconds += times * THOUGHT
  }
  focused(): Promise<string> {
    return this.page.evaluate<string>(
      '(({ name, type, textContent }) => (type === "submit" ? textContent.trim() : name))(document.activeElement)',
    )
  }
  /** By Tab where it is near, else by the mouse. */
  async reach(name: string): Promise<boolean> {
    const field = this.page.locator(`[name="${name}"]`)
    if ((await field.count()) === 0) return false
    if ((await this.focused()) === name) return true
    if (!(await field.isVisible())) {
      await field.evaluate(
        '(it) => { for (let at = it; at; at = at.parentElement?.closest("details")) at.setAttribute("open", "") }',
      )
      this.seconds += MOUSE
    }
    await field.focus()
    this.seconds += MOUSE
    return true
  }
  async type(name: string, value: string): Promise<void> {
    this.think()
    const field = this.page.locator(`[name="${name}"]`)
    if ((await field.locator('option').count()) > 0) {
      // A choice is found by its first letters.
      const has = await field.locator(`option[value="${value}"]`).count()
      if (has > 0) await field.selectOption(value)
      this.seconds += 3 * KEY
      this.keys += 3
      return
    }
    await this.press('Control+A')
    for (const sign of value) {
      await this.page.keyboard.type(sign)
      this.keys += 1
      this.seconds += KEY
    }
    if (value === '') await this.press('Delete')
  }
}

const kindOf = (pointer: string): string => pointer.split('/')[2] ?? ''

/** Where on the form a value of the paper belongs; undefined where the form has no such part yet. */
const nameOf = (held: Held, parts: readonly { readonly kind?: unknown }[]): string | undefined => {
  if (held.field) return held.field.pointer === '/parcelNumber' ? '/parcel' : held.field.pointer
  if (held.pointer === '/parcelNumber') return '/parcel'
  if (!held.pointer.startsWith('/components/')) return held.pointer
  const at = parts.findIndex(({ kind }) => kind === kindOf(held.pointer))
  return at < 0 ? undefined : `/components/${at}/${held.pointer.split('/').slice(3).join('/')}`
}

inBrowser('the pace of a clerk', () => {
  test(`${PAPERS} papers met for the first time (${GRADE}), each within half a minute on the average`, async () => {
    const waiting: { readonly id: string; readonly papers: readonly Paper[] }[] = []
    for (let at = 0; at < PAPERS; at++) {
      const { pdf, papers } = await unseenPage(single[at % single.length]!, SEED + at)
      const file = GRADE === 'text' ? pdf : await scanned(pdf, GRADE as Grade, SEED + at)
      waiting.push({ id: await waitingOf(service, people.reviewer, file, papers), papers })
    }
    const { page, context } = await openPage({
      viewport: DESK,
      extraHTTPHeaders: { authorization: `Bearer ${people.reviewer.token}` },
    })
    const clerk = new Clerk(page)
    const told: string[] = []
    let confirmed = 0
    for (const { id, papers } of waiting) {
      const [began, keys] = [clerk.seconds, clerk.keys]
      const from = performance.now()
      await page.goto(`${here}/${id}`)
      await page.locator('.confirm.live').waitFor()
      clerk.seconds += (performance.now() - from) / 1_000
      const { proposals } = await wholeDocument(services, people.reviewer, id)
      const { held } = heldAgainst(papers, proposals)
      const parts = proposals[0]?.entry.components ?? []
      const wrong = held.filter((it) => !it.right && it.pointer !== '/address')
      const wanted = new Map(wrong.map((it) => [nameOf(it, parts), String(it.expected ?? '')]))
      // What a permit cannot be without is chosen where the paper does not say it.
      const [{ truth }] = papers as readonly [Paper]
      for (const [name, value] of [['/kind', truth.entry.kind]] as const)
        if (proposals[0]?.entry.kind !== value) wanted.set(name, value ?? '')
      clerk.think(held.filter((it) => it.right && isMarked(it)).length)
      // What is to be checked, one after the other; corrected where it is wrong.
      for (let at = 0; at < 60; at++) {
        const name = await clerk.focused()
        if (/^Confirm/.test(name)) break
        clerk.think()
        const value = wanted.get(name)
        if (value !== undefined) await clerk.type(name, value)
        wanted.delete(name)
        await clerk.press('Enter')
      }
      for (const [name, value] of wanted) {
        clerk.think()
        if (name !== undefined && (await clerk.reach(name))) await clerk.type(name, value)
        // A part that was not read at all is added and typed.
        else clerk.seconds += 2 * MOUSE + value.length * KEY
      }
      await page.locator('.field input:not([type=checkbox])').first().focus()
      await clerk.press('Control+Enter')
      await page
        .waitForURL((url) => !url.href.endsWith(id) || url.search !== '', { timeout: 5_000 })
        .catch(() => {})
      for (const fault of await page.locator('.fault').allTextContents()) told.push(`  ${fault.trim()}`)
      const { document } = await wholeDocument(services, people.reviewer, id)
      if (document.state === 'confirmed') confirmed += 1
      told.push(
        `${(clerk.seconds - began).toFixed(0)} s, ${clerk.keys - keys} keys, ${held.length} values, ` +
          `${wrong.length} to correct, ${document.state}`,
      )
    }
    const each = clerk.seconds / PAPERS
    process.stdout.write(
      `${told.join('\n')}\n${PAPERS} papers (${GRADE}): ${each.toFixed(1)} s each, twenty in ` +
        `${((20 * each) / 60).toFixed(1)} min, ${(clerk.keys / PAPERS).toFixed(0)} keys each; ${confirmed} confirmed\n`,
    )
    expect(each).toBeLessThan(AIM_SECONDS)
    expect(confirmed).toBe(PAPERS)
    await context.close()
  })
})
