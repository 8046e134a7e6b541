import { describe, expect, test } from 'vitest'
import { CHECKED, CODE_FORM, STATES } from '../../src/http/pages/letter-check/copy.ts'
import { CHANGES, NOTIFICATION_FAULTS, NOTIFICATIONS_PART } from '../../src/http/pages/notifications/copy.ts'
import { STATUS_PAGE } from '../../src/http/pages/parcel/copy.ts'
import { CODE, SIGN_IN } from '../../src/http/pages/sign-in/copy.ts'
import { englishGrade, englishSyllables } from '../support/readability/english.ts'
import { SPANISH_NORMAL, spanishEase, spanishSyllables } from '../support/readability/spanish.ts'

describe('the grade of an English text', () => {
  /** Examples that descriptions of the formula give (from memory), and one counted by hand. */
  test.each([
    ['The cat sat on the mat.', -1.45],
    ['The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.', 11.26],
    ['This sentence, taken as a reading passage unto itself, is being used to prove a point.', 7.61],
    // 12 words, 2 sentences, 16 syllables: 0.39 · 6 + 11.8 · 16/12 − 15.59.
    ['The septic tank is smaller than the permit says. Call the county.', 2.48],
  ])('%s', (text, grade) => {
    expect(englishGrade(text)).toBeCloseTo(grade, 1)
  })

  test.each([
    ['tank', 1],
    ['inspection', 3],
    ['required', 2],
    ['needed', 2],
    ['the', 1],
    ['table', 2],
    ['pages', 2],
    ['gallons', 2],
    ['county’s', 2],
    ['absorption', 3],
    ['drainfield', 2],
    ['material', 4],
    ['re-inspect', 3],
    ['previous', 3],
  ])('%s has %i syllables', (word, count) => expect(englishSyllables(word)).toBe(count))

  test('a time or a number ends no sentence', () => {
    const once = englishGrade('The office opens at 2:43 p.m. and the tank holds 2.5 gallons')
    expect(once).toBeCloseTo(englishGrade('The office opens at 2 pm and the tank holds 2 gallons'), 5)
  })
})

describe('the ease of a Spanish text', () => {
  /** Counted by hand: words, sentences, syllables. */
  test.each([
    // 6 words, 1 sentence, 9 syllables: el tan-que es de buen ta-ma-ño.
    ['El tanque es de buen tamaño.', 206.835 - (62.3 * 9) / 6 - 6],
    // 9 words, 2 sentences, 17 syllables: el con-da-do re-vi-sa la car-ta, us-ted no ha-ce na-da.
    ['El condado revisa la carta. Usted no hace nada.', 206.835 - (62.3 * 17) / 9 - 4.5],
  ])('%s', (text, ease) => {
    expect(spanishEase(text)).toBeCloseTo(ease, 5)
  })

  test.each([
    ['inspección', 3],
    ['registro', 3],
    ['estado', 3],
    ['día', 2],
    ['ciudad', 2],
    ['guía', 2],
    ['que', 1],
    ['séptico', 3],
    ['leer', 2],
    ['y', 1],
    ['hoy', 1],
    ['mayúsculas', 4],
    ['desagüe', 3],
  ])('%s has %i syllables', (word, count) => expect(spanishSyllables(word)).toBe(count))
})

describe('what agents, lenders and owners read on pages', () => {
  const letterStates = Object.fromEntries(Object.entries(STATES).map(([state, { lead }]) => [state, lead]))
  const pages = {
    SIGN_IN,
    CODE,
    STATUS_PAGE,
    NOTIFICATIONS_PART,
    NOTIFICATION_FAULTS,
    CHANGES,
    CODE_FORM,
    CHECKED,
  }
  const said = Object.values({ ...pages, letterStates }).flatMap((copy) =>
    Object.values(copy as Readonly<Record<string, { readonly en: unknown; readonly es: unknown }>>),
  )
  /** A label is no sentence, and two words have no measure. */
  const sentences = said.filter(
    ({ en }) => typeof en === 'string' && /[.?]$/.test(en) && en.split(' ').length > 3,
  )

  test('is at grade 8 or below in English', () => {
    const hard = sentences
      .map(({ en }) => [englishGrade(String(en)), en])
      .filter(([grade]) => Number(grade) > 8)
    expect(hard).toEqual([])
  })

  test('is at least normal in Spanish', () => {
    const hard = sentences
      .map(({ es }) => [spanishEase(String(es)), es])
      .filter(([ease]) => Number(ease) < SPANISH_NORMAL)
    expect(hard).toEqual([])
  })
})
