import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { keptForm } from '../../../../src/reconcile/kept.ts'
import type { Reconciliation } from '../../../../src/reconcile/reconcile.ts'
import { hashOf } from '../../../../src/store/hash.ts'
import { inBrowser, scratchFolder } from '../../../support/browser.ts'
import {
  HAND,
  inspectionService,
  phoneAt,
  ready,
  shown,
  signInAt,
  soon,
  title,
} from '../../../support/inspection-service.ts'
import { openKept } from '../../../support/kept-browser.ts'
import type { Fate } from '../../../support/lossy-proxy.ts'
import { pictureWith } from '../../../support/pictures.ts'

vi.setConfig({ testTimeout: 240_000 })

const { parcel, findingsOf, photosOf, proxy, ask } = await inspectionService()

const press = (page: Page, words: string | RegExp) =>
  page.locator('.big label, .tick').filter({ hasText: words, visible: true }).first().tap()
const next = (page: Page) => page.locator('.bar button[value="next"]').tap()
/** Why the rest was left out, of the system and of a part: without a reason it is not taken. */
const inShort = async (page: Page) => {
  await page.locator('#f-leftOutBecause').selectOption('no-time')
}
/** The ground was walked and is dry: an inspection of nothing is not taken. */
const dry = async (page: Page) => {
  await page.locator('label', { has: page.locator('input[name="ground"][value="dry"]') }).tap()
  await inShort(page)
}
const kept = (page: Page) => shown(page, '#kept')
const goTo = async (page: Page, step: string) => {
  await page.locator('.walk summary').tap()
  await page.locator('.walk a').filter({ hasText: step }).first().tap()
  await soon(() => title(page)).toBe(step)
}
/** What the worker and the page put by: the form opens without a network once all of it is there. */
const putBy = (page: Page) =>
  soon(() =>
    page.evaluate<number>(`(async () => {
          const names = await caches.keys()
          const all = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname)))
          const has = (part) => all.flat().some((path) => path.includes(part))
          return ['/inspection', '/file.json', '/inspection-rules/', '/main.', '/reckoning.', '/sheet.', '/brief'].filter(has).length
        })()`),
  ).toBe(7)
const controlled = (page: Page) =>
  soon(() => page.evaluate<boolean>('navigator.serviceWorker.controller !== null')).toBe(true)

inBrowser('without signal', () => {
  test('opened at the office, filled and photographed in the yard, the browser closed; opened again, all is there; sent once', async () => {
    const { number, at } = await parcel()
    const folder = await scratchFolder()
    const morning = await openKept(folder, HAND)
    const page = await morning.newPage()
    await signInAt(page, at)
    await ready(page)
    await putBy(page)
    await controlled(page)

    await morning.setOffline(true)
    await page.reload()
    await ready(page)
    await page.locator('#f-bedroomsCounted').fill('3')
    await inShort(page)
    await goTo(page, 'Tank')
    await press(page, /^Found$/)
    await inShort(page)
    await page.locator('#f-shape').selectOption('rectangular')
    for (const [field, length] of [
      ['length', '6\'-0"'],
      ['width', '4 ft'],
      ['liquidDepth', '48 in'],
    ] as const)
      await page.locator(`#f-${field}`).fill(length)
    await page
      .locator('#sum')
      .getByText(/71\d ± \d+ gal/)
      .waitFor()
    await page.setInputFiles('#photo', {
      name: 'a.jpg',
      mimeType: 'image/jpeg',
      buffer: await pictureWith({}, 'jpeg', [800, 600]),
    })
    await page.locator('.shots canvas').waitFor()
    await soon(() => kept(page)).toMatch(
      /^Kept on this phone, \d+:\d\d [ap]m, 1 photo with it\. Not sent yet: no signal\.$/,
    )
    expect(proxy.reached.filter((it) => it.startsWith('POST /v1'))).toEqual([])
    await morning.close()

    const evening = await openKept(folder, { ...HAND, offline: true })
    const again = await evening.newPage()
    await again.goto(`${at}?step=tank`)
    await ready(again)
    expect(await title(again)).toBe('Tank')
    expect(await again.locator('#f-length').inputValue()).toBe('6\'-0"')
    expect(await again.locator('.outcome :checked').getAttribute('value')).toBe('found')
    await again.locator('.shots canvas').waitFor()
    await again
      .locator('#sum')
      .getByText(/71\d ± \d+ gal/)
      .waitFor()
    await goTo(again, 'Review and submit')
    await next(again)
    await soon(() => title(again)).toBe('Ready to submit')
    expect(await findingsOf(number)).toEqual([])

    await evening.setOffline(false)
    await soon(() => title(again)).toBe('Submitted')
    await soon(() => kept(again)).toBe('Photos sent: 1.')
    const all = await findingsOf(number)
    expect(all.map(({ state }) => state)).toEqual(['submitted'])
    expect(all[0].record.bedroomsCounted).toBe(3)
    expect(await photosOf(all[0].id)).toHaveLength(1)
    await evening.close()
  })

  test('another inspection that waits on this phone goes when any is opened, and the list of inspections shows it', async () => {
    const [first, second] = [await parcel(), await parcel()]
    const { page, context } = await phoneAt(first.at)
    await ready(page)
    await putBy(page)
    await controlled(page)
    await page.goto(second.at)
    await ready(page)
    await context.setOffline(true)
    await page.goto(first.at)
    await ready(page)
    await page.locator('#f-people').fill('4')
    await soon(() => kept(page)).toMatch(/no signal/)
    await page.goto(new URL('/counties/quillback/inspections', first.at).href)
    await page.locator('#on-this-phone').getByText(first.number).waitFor()
    await context.setOffline(false)
    await soon(async () => (await findingsOf(first.number)).length).toBe(1)
    await soon(() => shown(page, '#on-this-phone')).toBe('')
    await context.close()
  })

  test('whatever gets lost: answers after the service has done it, requests on the way; one inspection, one of each photo', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    const lost = new Map<string, number>()
    // Of each kind of request the first never arrives and the second one's answer is lost.
    proxy.lose((method, path): Fate => {
      if (!path.startsWith('/v1') || method === 'GET') return 'answered'
      const kind = `${method} ${path.replace(/[0-9a-f-]{36}/g, '…')}`
      const times = (lost.get(kind) ?? 0) + 1
      lost.set(kind, times)
      return times === 1 ? 'lost' : times === 2 ? 'answer-lost' : 'answered'
    })
    await page.locator('#f-people').fill('03')
    await inShort(page)
    await goTo(page, 'Tank')
    await press(page, /^Found$/)
    await inShort(page)
    await page.locator('#f-length').fill('8 ft')
    await page.setInputFiles('#photo', { name: 'a.jpg', mimeType: 'image/jpeg', buffer: await pictureWith() })
    const nudged =
      <T>(ask: () => Promise<T>) =>
      async (): Promise<T> => {
        await page.evaluate('dispatchEvent(new Event("online"))')
        return ask()
      }
    await soon(nudged(() => photosFor(number))).toBe(1)
    await page.locator('#f-length').fill('9 ft')
    await soon(nudged(() => kept(page))).toMatch(/^Sent/)
    await goTo(page, 'Review and submit')
    await next(page)
    await soon(nudged(() => title(page))).toBe('Submitted')
    proxy.lose(() => 'answered')
    expect([...lost.keys()].sort()).toEqual([
      'POST /v1/counties/quillback/findings/…/photos',
      'POST /v1/counties/quillback/findings/…/submission',
      'POST /v1/counties/quillback/parcels/…/findings',
      'PUT /v1/counties/quillback/findings/…',
    ])
    const all = await findingsOf(number)
    expect(all.map(({ state }) => state)).toEqual(['submitted'])
    expect(all[0].record.components[0].length.asWritten).toBe('9 ft')
    expect(await photosOf(all[0].id)).toHaveLength(1)
    await context.close()
  })

  const photosFor = async (number: string): Promise<number> => {
    const [draft] = await findingsOf(number)
    return draft ? (await photosOf(draft.id)).length : 0
  }
})

inBrowser('on the phone as on the service', () => {
  test('what the browser reckons before anything is sent is what the service stores, to the byte', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    await inShort(page)
    await goTo(page, 'Tank')
    await press(page, /^Found$/)
    await inShort(page)
    await page.locator('#f-shape').selectOption('rectangular')
    for (const [field, length] of [
      ['length', '6\'-0"'],
      ['width', '1.22 m'],
      ['liquidDepth', '48 in'],
    ] as const)
      await page.locator(`#f-${field}`).fill(length)
    await goTo(page, 'Review and submit')
    await soon(() => kept(page)).toMatch(/^Sent/)
    const reckoned = await page.evaluate<unknown>(`(async () => {
      const at = performance.getEntriesByType('resource').map(({ name }) => name).find((name) => /reckoning\\./.test(name))
      const reckoning = await import(at)
      const file = await (await fetch(document.querySelector('#inspection').dataset.file)).json()
      const rules = await (await fetch(file.rules)).json()
      const [inspection] = await new Promise((resolve) => {
        const open = indexedDB.open('asfound-inspections')
        open.onsuccess = () => {
          const all = open.result.transaction('inspections').objectStore('inspections').getAll()
          all.onsuccess = () => resolve(all.result)
        }
      })
      const { record } = reckoning.readForm(inspection.form)
      const given = { ...file.given, book: reckoning.bookOf(rules), findings: inspection.base.id }
      return JSON.parse(JSON.stringify(reckoning.reckon(given, record)))
    })()`)
    await next(page)
    await soon(() => title(page)).toBe('Submitted')
    const { body } = await ask('firm', { url: `/v1/counties/quillback/parcels/${number}/reconciliation` })
    expect(body.resultHash).toBe(hashOf(keptForm(reckoned as Reconciliation)))
    await context.close()
  })
})

inBrowser('after it was submitted', () => {
  test('amended on the phone, it begins as it was; a draft that was begun elsewhere is gone on with', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    await page.locator('#f-people').fill('4')
    await dry(page)
    await goTo(page, 'Review and submit')
    await next(page)
    await soon(() => title(page)).toBe('Submitted')
    await page.locator('button[value="amend"]').tap()
    await soon(() => title(page)).toBe('Before you begin')
    expect(await page.locator('#f-people').inputValue()).toBe('4')
    await soon(async () => (await findingsOf(number)).length).toBe(2)
    await goTo(page, 'Review and submit')
    await next(page)
    await soon(() => title(page)).toBe('Submitted')

    const last = (await findingsOf(number)).find(
      ({ amends, state }) => amends !== null && state === 'submitted',
    )
    const body = { inspectedOn: last.record.inspectedOn, bedroomsCounted: 5 }
    await ask('firm', { method: 'POST', url: `/v1/counties/quillback/findings/${last.id}/amendment`, body })
    await page.reload()
    await soon(() => page.locator('#f-bedroomsCounted').inputValue()).toBe('5')
    await context.close()
  })
})

inBrowser('whoever signs out', () => {
  test('takes the county’s files off the phone; what was not sent stays, for them alone', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(at)
    await ready(page)
    await putBy(page)
    proxy.lose((method) => (method === 'POST' ? 'lost' : 'answered'))
    await page.locator('#f-people').fill('4')
    await soon(() => kept(page)).toMatch(/^Kept on this phone/)
    proxy.lose((method, path) => (method === 'POST' && path.startsWith('/v1') ? 'lost' : 'answered'))
    await page.getByRole('button', { name: 'Sign out' }).tap()
    await page.waitForURL(/sign-in|\/$/)
    const left = await page.evaluate<readonly string[]>('caches.keys()')
    expect(left).toEqual(['asfound-assets'])
    proxy.lose(() => 'answered')
    await signInAt(page, at)
    await ready(page)
    expect(await page.locator('#f-people').inputValue()).toBe('4')
    await soon(async () => (await findingsOf(number)).length).toBe(1)
    await context.close()
  })
})

inBrowser('two devices on one draft', () => {
  test('both are shown side by side, nothing is written over, and what was chosen is what there is', async () => {
    const { number, at } = await parcel()
    const one = await phoneAt(at)
    await ready(one.page)
    await goTo(one.page, 'Tank')
    await press(one.page, /^Found$/)
    await one.page.locator('#f-length').fill('8 ft')
    await goTo(one.page, 'D-box')
    await soon(() => kept(one.page)).toMatch(/^Sent/)

    const two = await phoneAt(`${at}?step=tank`)
    await ready(two.page)
    expect(await two.page.locator('#f-length').inputValue()).toBe('8 ft')
    await two.context.setOffline(true)
    await two.page.locator('#f-length').fill('9 ft')
    await soon(() => kept(two.page)).toMatch(/no signal/)

    await goTo(one.page, 'Tank')
    await one.page.locator('#f-width').fill('4 ft')
    await goTo(one.page, 'D-box')
    await soon(() => kept(one.page)).toMatch(/^Sent/)

    await two.context.setOffline(false)
    await soon(() => title(two.page)).toBe('Two copies of this inspection')
    const stands = async () => {
      const { length, width } = (await findingsOf(number))[0].record.components[0]
      return [length?.asWritten, width?.asWritten]
    }
    expect(await stands()).toEqual(['8 ft', '4 ft'])
    const lines = await two.page.locator('.clash').allInnerTexts()
    expect(lines.map((line) => line.replace(/\s+/g, ' '))).toEqual([
      'Tank: Inside length Yours 9 ft (tape, inside) only this one was changed The other 8 ft (tape, inside)',
      'Tank: Inside width Yours nothing The other 4 ft (tape, inside) only this one was changed',
    ])
    await two.page.locator('button[value="settle"]').tap()
    await soon(stands).toEqual(['9 ft', '4 ft'])
    await soon(() => two.page.locator('#f-width').inputValue()).toBe('4 ft')
    await Promise.all([one.context.close(), two.context.close()])
  })

  test('submitted from one: the other is told, keeps what it has, and may amend', async () => {
    const { number, at } = await parcel()
    const one = await phoneAt(at)
    await ready(one.page)
    await one.page.locator('#f-people').fill('2')
    await dry(one.page)
    await soon(() => kept(one.page)).toMatch(/^Sent/)
    const two = await phoneAt(at)
    await ready(two.page)
    await two.context.setOffline(true)
    await two.page.locator('#f-bedroomsCounted').fill('5')
    await soon(() => kept(two.page)).toMatch(/no signal/)
    await goTo(one.page, 'Review and submit')
    await next(one.page)
    await soon(() => title(one.page)).toBe('Submitted')
    await two.context.setOffline(false)
    await soon(() => title(two.page)).toBe('Two copies of this inspection')
    expect(await shown(two.page, '.lead')).toMatch(/submitted from another device/)
    await two.page.locator('button[value="settle"]').tap()
    await soon(async () => (await findingsOf(number)).length).toBe(2)
    const all = await findingsOf(number)
    const [draft, submitted] = ['draft', 'submitted'].map((state) => all.find((it) => it.state === state))
    expect([draft.amends, draft.record.bedroomsCounted, submitted.record.bedroomsCounted]).toEqual([
      submitted.id,
      5,
      null,
    ])
    await Promise.all([one.context.close(), two.context.close()])
  })
})
