import { expect, test } from 'vitest'
import { type Copy, inLanguage } from '../../src/words/copy.ts'

const COPY = {
  hello: { en: 'Hello', es: 'Hola' },
  tries: { en: (left: number) => `${left} left`, es: (left: number) => `quedan ${left}` },
} satisfies Copy

test('a page takes its sentences in one language', () => {
  expect(inLanguage(COPY, 'es').hello).toBe('Hola')
  expect(inLanguage(COPY, 'en').tries(2)).toBe('2 left')
  expect(inLanguage(COPY, 'es').tries(2)).toBe('quedan 2')
})

test('a sentence that lacks a language does not compile', () => {
  // @ts-expect-error There is no Spanish.
  const lacking = { hello: { en: 'Hello' } } satisfies Copy
  expect(Object.keys(lacking.hello)).toEqual(['en'])
})
