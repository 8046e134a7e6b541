import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { loadRuleBook, loadRuleBookWith, readPackTexts } from '../../src/files/rule-packs.ts'

let folder: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'asfound-packs-'))
  await mkdir(join(folder, 'alder'))
  await writeFile(
    join(folder, 'alder', 'code.yaml'),
    'pack: alder/code\njurisdiction: { kind: county, name: Alder County }\ntitle: T\nextends: [practice/solids]\n',
  )
  await writeFile(join(folder, 'alder', 'notes.txt'), 'not a pack')
})
afterAll(() => rm(folder, { recursive: true }))

test('a folder’s packs are read by their paths inside it, and nothing else', async () => {
  expect((await readPackTexts(folder)).map((it) => it.path)).toEqual(['alder/code.yaml'])
})

test('the packs that come with the service are sound', async () => {
  const book = await loadRuleBook()
  expect(book.ok ? [] : book.error).toEqual([])
})

test('a county’s own pack is read together with those it extends, as a folder and as one file', async () => {
  for (const path of [folder, join(folder, 'alder', 'code.yaml')]) {
    const book = await loadRuleBookWith(path)
    expect(book.ok && book.value.places.get('alder')?.layers.map((it) => it.pack.pack)).toEqual([
      'alder/code',
      'practice/solids',
      // The conventions lie beneath every place, whether its packs name them or not.
      'conventions/inspection',
      'conventions/tolerances',
    ])
  }
})

test('alone it can’t: what it extends is missing', async () => {
  const book = await loadRuleBook(folder)
  expect(book.ok ? [] : book.error).toEqual([
    { file: 'alder/code.yaml', line: 4, col: 11, message: 'there is no pack practice/solids' },
  ])
})

test('a folder without a pack says so', async () => {
  const empty = await mkdtemp(join(tmpdir(), 'asfound-packs-'))
  const book = await loadRuleBookWith(empty)
  await rm(empty, { recursive: true })
  expect(book.ok ? '' : book.error[0]?.message).toBe('there is no pack (.yaml) in this folder')
})
