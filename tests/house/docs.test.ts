import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { DISCREPANCY_KINDS } from '../../src/reconcile/kinds.ts'
import { CHECKS } from '../../src/reconcile/register.ts'
import { QUESTIONS, questionWords } from '../../src/words/questions.ts'

const page = readFileSync(new URL('../../docs/discrepancies.md', import.meta.url), 'utf8')
const named = (section: string, pattern: RegExp) => [...section.matchAll(pattern)].map(([, name]) => name!)
const [, questions = '', kinds = ''] = page.split(/^## .*$/m)

test('every check has a row on its page, with its question, and every row is a check', () => {
  expect(named(questions, /^\| `([a-z-]+)`/gm).sort()).toEqual(CHECKS.map(({ id }) => id).sort())
  for (const { id } of CHECKS) {
    const row = questions.split('\n').find((line) => line.startsWith(`| \`${id}\``))
    expect(row, id).toContain(questionWords(id).slice(0, -1))
  }
})

test('every question belongs to a check', () => {
  expect(Object.keys(QUESTIONS).sort()).toEqual(CHECKS.map(({ id }) => id).sort())
})

test('every kind of discrepancy has its paragraph, and every paragraph a kind', () => {
  const listed = kinds
    .split('\n')
    .flatMap((line) => (line.startsWith('- ') ? named(line, /`([a-z-]+)`/g) : []))
  expect(listed.sort()).toEqual([...DISCREPANCY_KINDS].sort())
})

test('every kind can be raised by some check', () => {
  expect([...new Set(CHECKS.flatMap(({ raises }) => raises))].sort()).toEqual([...DISCREPANCY_KINDS].sort())
})
