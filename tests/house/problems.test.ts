import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { PROBLEMS } from '../../src/http/problem-catalog.ts'
import { filesUnder, textOf } from './source-files.ts'

const page = readFileSync(new URL('../../docs/problems.md', import.meta.url), 'utf8')
const sections = [
  ...page.matchAll(/^## `([a-z-]+)` \((\d{3})\)\n\n\*\*(.+)\*\*\n\n([\s\S]+?)(?=\n+## |\n*$(?![\s\S]))/gm),
]

test('the page has every problem of the catalog, word for word, and no other', () => {
  const listed = sections.map(([, name, status, title, about]) => [
    name,
    Number(status),
    title,
    about!.trim(),
  ])
  expect(listed).toEqual(
    Object.entries(PROBLEMS).map(([name, { status, title, about }]) => [name, status, title, about]),
  )
})

test('every problem can be met: something answers with it', () => {
  const text = filesUnder('src')
    .filter((file) => !file.endsWith('problem-catalog.ts'))
    .map(textOf)
    .join('\n')
  expect(Object.keys(PROBLEMS).filter((name) => !text.includes(`'${name}'`))).toEqual([])
})

test('statuses are those that RFC 9110 and RFC 6585 define for it', () => {
  for (const { status } of Object.values(PROBLEMS))
    expect([400, 401, 403, 404, 409, 412, 413, 415, 422, 428, 429, 500, 503]).toContain(status)
})
