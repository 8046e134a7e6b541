import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { ROOT } from './source-files.ts'

const page = readFileSync(path.join(ROOT, 'docs/security.md'), 'utf8')
const rows = [...page.matchAll(/^\| (\d+\.\d+\.\d+) \| (.*) \|$/gm)].map(([, id, held]) => ({
  id: id!,
  held: held!,
}))

test('every test that the page of security names is there', () => {
  const named = [...page.matchAll(/`([a-z][\w./-]*\/[\w.-]+)`/g)].map(([, name]) => name!)
  expect(named.length).toBeGreaterThan(100)
  expect(
    named.filter((name) => !name.endsWith('.md') && !existsSync(path.join(ROOT, 'tests', name))),
  ).toEqual([])
})

test('every requirement is held by a test, not applicable in five words at most, or open', () => {
  expect(rows.length).toBeGreaterThan(240)
  const unclear = rows.filter(({ held }) => {
    if (/^`[^`]+`(?: `[^`]+`)*$/.test(held)) return false
    const [, words] = /^(?:not applicable|open): (.+)$/.exec(held) ?? []
    return words === undefined || words.split(' ').length > 5
  })
  expect(unclear).toEqual([])
})

test('the page counts them rightly', () => {
  const of = (kind: (held: string) => boolean) => rows.filter(({ held }) => kind(held)).length
  expect(page.replaceAll(/\s+/g, ' ')).toContain(
    `${of((it) => it.startsWith('`'))} are held by a test, ${of((it) => it.startsWith('not applicable'))} are not applicable, ${of((it) => it.startsWith('open'))} are open.`,
  )
})
