import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { testApp } from '../support/app.ts'
import { ROOT } from './source-files.ts'

const read = (file: string) => readFileSync(path.join(ROOT, file), 'utf8')
const page = read('docs/operations.md')
const { ask } = await testApp()

test('every figure of /metrics is on the page, and every figure on the page is in /metrics', async () => {
  const { body } = await ask('nobody', { url: '/metrics' })
  const served = [...String(body).matchAll(/^# TYPE (\S+) /gm)].map(([, name]) => name!)
  const rows = page.split('\n').filter((line) => line.startsWith('| `'))
  const told = rows.flatMap((line) =>
    [...line.split('|')[1]!.matchAll(/`((?:asfound|nodejs|process)_[a-z0-9_]+)`/g)].map(([, name]) => name!),
  )
  expect(told.toSorted()).toEqual(served.toSorted())
})

test('every command that the documents name is one, and every command is named for whoever carries it on', () => {
  const pages = ['README.md', 'DEVELOPERS.md', 'docs/operations.md']
  const named = new Set(
    pages.flatMap((file) => [...read(file).matchAll(/npm run ([a-z:]+)/g)].map(([, name]) => name!)),
  )
  expect([...named].filter((name) => !Object.hasOwn(manifest.scripts, name))).toEqual([])
  const table = read('DEVELOPERS.md')
  const lacking = Object.keys(manifest.scripts).filter((name) => !new RegExp(`[\` ]${name}\``).test(table))
  expect(lacking).toEqual([])
})

test('every page of docs/ that the README leads to is there', () => {
  const linked = [...read('README.md').matchAll(/\]\((docs\/[\w-]+\.md|[A-Z]+\.md)\)/g)].map(([, to]) => to!)
  expect(linked).toContain('docs/operations.md')
  expect(linked.filter((file) => !existsSync(path.join(ROOT, file)))).toEqual([])
})
