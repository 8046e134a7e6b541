import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { accessFaults, inBrowser, overflow, PHONE } from '../../../support/browser.ts'
import {
  inspectionService,
  phoneAt,
  ready,
  shown,
  smallTargets,
  soon,
  title,
} from '../../../support/inspection-service.ts'
import { pictureWith } from '../../../support/pictures.ts'

vi.setConfig({ testTimeout: 180_000 })

const { parcel, findingsOf, photosOf } = await inspectionService()

/** A label that holds a radio or a tick, pressed as a thumb does. */
const press = (page: Page, words: string | RegExp) =>
  page.locator('.big label, .tick').filter({ hasText: words, visible: true }).first().tap()
const next = (page: Page) => page.locator('.bar button[value="next"]').tap()

async function sound(page: Page, where: string): Promise<void> {
  // As high as the page: wherever it is scrolled to, something lies half under the bar, and axe calls that too small.
  await page.setViewportSize({ width: PHONE.width, height: 5000 })
  expect(await accessFaults(page), where).toEqual([])
  await page.setViewportSize(PHONE)
  expect(await overflow(page), where).toBeLessThanOrEqual(0)
  expect(await smallTargets(page), where).toEqual([])
}

inBrowser('a whole inspection on a phone, by touch', () => {
  test('one component at a time from the house outward, numbers as they go in, photos in place, submitted', async () => {
    const { number, at } = await parcel()
    const { page, context, faults } = await phoneAt(at)
    await ready(page)
    expect(await shown(page, '.cautions')).toMatch(/Never enter a tank.*811/s)
    await sound(page, 'the start')
    await press(page, 'Occupied')
    await page.locator('#f-bedroomsCounted').fill('4')
    await page.locator('#f-leftOutBecause').selectOption('no-time')
    await page.locator('#f-reference-baseline').fill('36\'-1"')
    await page
      .locator('#live')
      .getByText(/designed for/)
      .first()
      .waitFor()
    await next(page)

    const walked: string[] = []
    const steps = ['House sewer', 'Tank', 'Outlet baffle', 'D-box', 'Line', 'Pit A', 'Pit B', 'Well']
    for (const step of steps) {
      await soon(() => title(page)).toBe(step)
      walked.push(await title(page))
      switch (step) {
        case 'Tank':
          expect(await shown(page, '.cautions')).toMatch(/Never enter/)
          await press(page, /^Found$/)
          await sound(page, 'the tank')
          await page.locator('#f-shape').selectOption('rectangular')
          await page.locator('#f-length').fill('6\'-0"')
          await page.locator('#f-width').fill('48 in')
          await page.locator('#f-liquidDepth').fill('1.22 m')
          await page
            .locator('#sum')
            .getByText(/^71\d ± \d+ gal$/)
            .waitFor()
          await page
            .locator('#live')
            .getByText(/the record says 1,000 gal/)
            .first()
            .waitFor()
          expect(await shown(page, '.ask-for')).toMatch(/^While it is open:|^Too rough/)
          await press(page, /^Below$/)
          await page.locator('#f-levelAboveOutlet').fill('2 in')
          await page.locator('#f-leftOutBecause').selectOption('no-time')
          await page.setInputFiles('#photo', {
            name: 'lid.jpg',
            mimeType: 'image/jpeg',
            buffer: await pictureWith({}, 'jpeg', [640, 480]),
          })
          await page.locator('.shots img').waitFor()
          await sound(page, 'the tank, with numbers and a photo')
          break
        case 'Line':
          await press(page, /^Found$/)
          await page.locator('#f-material').selectOption('pvc')
          await page
            .locator('#live')
            .getByText(/replaced|permit/)
            .first()
            .waitFor()
          break
        case 'Outlet baffle':
          await press(page, 'Searched for, not found')
          await press(page, 'Looked in through an opening')
          await page
            .locator('#live')
            .getByText(/Action/)
            .first()
            .waitFor()
          await sound(page, 'the baffle')
          break
        case 'Pit A':
          await press(page, 'Not reached')
          await press(page, 'Paved or built over')
          await sound(page, 'the pit')
          break
        case 'Pit B':
          await press(page, 'Not looked for')
          break
        default:
          await press(page, /^Found$/)
      }
      await next(page)
    }
    expect(walked).toEqual(steps)

    await sound(page, 'not on record')
    await page.locator('#f-newKind').selectOption('cesspool')
    await page.locator('button[value="add"]').tap()
    expect(await page.locator('#f-label').inputValue()).toBe('cesspool')
    await page.locator('#f-label').fill('old cesspool')
    await page.locator('#f-leftOutBecause').selectOption('unsafe')
    await next(page)
    expect(await shown(page, '.added')).toMatch(/Old cesspool/)
    await next(page)

    expect(await page.locator('.notice.bad').count()).toBe(0)
    await sound(page, 'the look back')
    const answers = await shown(page, '.answers')
    expect(answers).toMatch(/Tank\s*Found, holds 71\d ± \d+ gal, 1 photo/)
    expect(answers).toMatch(/Old cesspool/)
    await next(page)
    await page.getByRole('heading', { name: 'Submitted' }).waitFor()
    await sound(page, 'sent')
    expect(await shown(page, '.status')).toMatch(/Action|action/)
    expect(faults).toEqual([])

    const [inspection] = await findingsOf(number)
    expect(inspection.state).toBe('submitted')
    expect(inspection.record.bedroomsCounted).toBe(4)
    const found = Object.fromEntries(
      inspection.record.components.map((it: { label: string }) => [it.label, it]),
    )
    expect(found.tank).toMatchObject({
      outcome: 'found',
      width: { asWritten: '48 in', method: 'inside-tape' },
      liquidDepth: { asWritten: '1.22 m', method: 'sounding-rod' },
      levelAboveOutlet: { asWritten: '2 in' },
    })
    expect(found.tank.levelAboveOutlet.ft).toBeCloseTo(-2 / 12, 9)
    expect(found['outlet baffle']).toMatchObject({
      outcome: 'not-found',
      searchedBy: ['seen-through-opening'],
    })
    expect(found['pit A']).toMatchObject({ outcome: 'not-reached', notReachedBecause: 'paved-over' })
    expect(found['old cesspool']).toMatchObject({ key: null, kind: 'cesspool' })
    expect(await photosOf(inspection.id)).toMatchObject([
      { component: 'tank', takenAt: expect.stringMatching(/[+-]\d\d:\d\d$/) },
    ])
    await context.close()
  })

  test('a fault shows beside its field in plain words, and goes when it is mended; the rest goes on being reckoned', async () => {
    const { at } = await parcel()
    const { page, context } = await phoneAt(`${at}?step=tank`)
    await ready(page)
    await press(page, /^Found$/)
    await page.locator('#f-length').pressSequentially('4-6')
    expect(await page.locator('#f-length-fault').isVisible()).toBe(false)
    await page.locator('#f-width').focus()
    await page
      .locator('#f-length-fault')
      .getByText(/may be one length or the two ends of a range/)
      .waitFor()
    expect(await page.locator('#f-length').getAttribute('aria-describedby')).toBe('f-length-fault')
    await sound(page, 'with a fault')
    await page.locator('#f-length').fill('4\'-6"')
    await page.locator('#f-length-fault').waitFor({ state: 'hidden' })
    expect(await page.locator('#f-length').getAttribute('aria-invalid')).toBeNull()
    await context.close()
  })

  test('feet and inches by keys of their own beside the figures; letters when they are wanted', async () => {
    const { at } = await parcel()
    const { page, context } = await phoneAt(`${at}?step=tank`)
    await ready(page)
    await press(page, /^Found$/)
    await page.locator('#f-length').tap()
    expect(await page.locator('#f-length').evaluate((it: { inputMode: string }) => it.inputMode)).toBe(
      'decimal',
    )
    await page.keyboard.type('7')
    await page.locator('.keys button', { hasText: '′' }).tap()
    await page.keyboard.type('10')
    await page.locator('.keys button', { hasText: '½' }).tap()
    await page.locator('.keys button', { hasText: '″' }).tap()
    expect(await page.locator('#f-length').inputValue()).toBe('7′10½″')
    expect(await page.evaluate('document.activeElement.id')).toBe('f-length')
    await sound(page, 'with the keys')
    await page.locator('.keys button', { hasText: 'abc' }).tap()
    expect(await page.locator('#f-length').evaluate((it: { inputMode: string }) => it.inputMode)).toBe('text')
    await context.close()
  })

  test('the place of a photo only where it was allowed; a fix of the thing with how sure it is', async () => {
    const { number, at } = await parcel()
    const { page, context } = await phoneAt(`${at}?step=well`, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      geolocation: { latitude: 41.5, longitude: -90.125, accuracy: 5 },
      permissions: ['geolocation'],
    })
    await ready(page)
    await press(page, /^Found$/)
    await page.locator('.fix summary').tap()
    await page.locator('[data-locate="fix"]').tap()
    await soon(() => page.locator('#f-fix-lat').inputValue()).toBe('41.5')
    expect(await page.locator('#f-fix-radiusFt').inputValue()).toBe('16.4')
    await press(page, 'Keep where it was taken')
    await page.setInputFiles('#photo', { name: 'a.jpg', mimeType: 'image/jpeg', buffer: await pictureWith() })
    await page.locator('.shots img').waitFor()
    const [draft] = await findingsOf(number)
    expect(draft.record.components[0].fix).toEqual({
      lat: 41.5,
      lon: -90.125,
      radiusFt: 16.4,
      coverage: 0.95,
    })
    expect(await photosOf(draft.id)).toMatchObject([{ place: { lat: 41.5, lon: -90.125, radiusFt: 16.4 } }])
    await page.goto(`${at}?step=start`)
    await ready(page)
    await page.getByText('GPS position of corner A').tap()
    await page.locator('[data-locate="cornerA"]').tap()
    await soon(() => page.locator('#f-cornerA-lat').inputValue()).toBe('41.5')
    expect(await overflow(page)).toBeLessThanOrEqual(0)
    await soon(async () => (await findingsOf(number))[0].record.cornerA?.radiusFt).toBe(16.4)
    await context.close()
  })
})
