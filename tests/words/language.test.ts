import { describe, expect, test } from 'vitest'
import { pickLanguage } from '../../src/words/language.ts'

describe('the language of an answer', () => {
  test.each([
    ['es', 'es'],
    ['es-MX,es;q=0.9,en;q=0.8', 'es'],
    ['en-US,en;q=0.9,es;q=0.8', 'en'],
    ['fr-CH, fr;q=0.9, es;q=0.5, *;q=0.1', 'es'],
    ['ES-419', 'es'],
    ['en;q=0.5, es;q=0.7', 'es'],
    ['es;q=0, en;q=0.1', 'en'],
    ['de', 'en'],
    ['', 'en'],
    ['estonian, ;;q=, es;q=9', 'en'],
  ])('of a browser that asks for %j is %s', (asked, language) => {
    expect(pickLanguage(asked, undefined)).toBe(language)
  })

  test('is the one chosen on a page, whatever the browser asks for', () => {
    expect(pickLanguage('en-US', 'es')).toBe('es')
    expect(pickLanguage('es-MX', 'en')).toBe('en')
  })

  test('is not one that nobody wrote', () => {
    expect(pickLanguage('es', 'fr')).toBe('es')
    expect(pickLanguage(undefined, undefined)).toBe('en')
  })
})
