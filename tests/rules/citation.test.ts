import { expect, test } from 'vitest'
import { type Citation, citation, citeInWords, weakest } from '../../src/rules/citation.ts'

const full = {
  authority: 'Board of Health',
  document: 'Code',
  edition: '2004',
  section: '9.12',
  readAt: 'https://example.org',
  verified: 'read',
}
const parse = (raw: unknown): Citation => citation.parse(raw)

test.each([
  [full, 'Board of Health, Code, 2004, 9.12'],
  [{ ...full, verified: 'second-hand', edition: null }, 'Board of Health, Code, 9.12 (second-hand)'],
  [{ authority: 'A', document: 'D', verified: 'from-memory' }, 'A, D (from memory, not read)'],
  [{ verified: 'common-practice' }, 'common practice, no source'],
])('%o reads "%s"', (raw, words) => {
  expect(citeInWords(parse(raw))).toBe(words)
})

test('an answer is as sure as the least sure of its sources', () => {
  const [read, memory, practice] = [
    parse(full),
    parse({ authority: 'A', document: 'D', verified: 'from-memory' }),
    parse({ verified: 'common-practice' }),
  ]
  expect(weakest([read])).toBe('read')
  expect(weakest([read, memory])).toBe('from-memory')
  expect(weakest([memory, practice, read])).toBe('common-practice')
})
