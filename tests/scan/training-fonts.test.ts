import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { DRAWN_FACES } from '../forms/sheet.ts'

type Font = {
  readonly package?: string
  readonly file?: string
  readonly version?: string
  readonly licence: string
  readonly group: string
  readonly heldOut?: true
}
const fonts = JSON.parse(
  readFileSync(new URL('../../src/scan/training/recognizer/fonts.json', import.meta.url), 'utf8'),
) as readonly Font[]

test('the recognizer is trained on open fonts only, each at a version', () => {
  const open = /^(OFL-1\.1|Apache-2\.0|UFL-1\.0|GUST-1\.0.*)$/
  expect(fonts.filter(({ licence }) => !open.test(licence))).toEqual([])
  expect(fonts.filter((font) => !font.file && !/^\d+\.\d+\.\d+$/.test(font.version ?? ''))).toEqual([])
})

test('no face that papers are measured in is trained on, and each group holds some out but never most', () => {
  const trained = fonts.flatMap((font) => (font.heldOut ? [] : [font.package]))
  expect(Object.values(DRAWN_FACES).filter((face) => trained.includes(face))).toEqual([])
  for (const group of new Set(fonts.map((font) => font.group))) {
    const own = fonts.filter((font) => font.group === group)
    const held = own.filter(({ heldOut }) => heldOut).length
    expect([group, held > 0, held * 3 < own.length]).toEqual([group, true, true])
  }
})
