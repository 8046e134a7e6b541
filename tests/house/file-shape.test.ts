import path from 'node:path'
import { expect, test } from 'vitest'
import { filesUnder, textOf } from './source-files.ts'

const files = filesUnder('src')
const MOST_LINES = 300

test('no file is longer than a person reads at once', () => {
  const long = files
    .map((file) => [file, textOf(file).trimEnd().split('\n').length] as const)
    .filter(([, lines]) => lines > MOST_LINES)
  expect(long).toEqual([])
})

test('files and folders are kebab-case and named for what they hold', () => {
  const parts = files.flatMap((file) => path.dirname(file).split('/').concat(path.basename(file, '.ts')))
  const wrong = [...new Set(parts)].filter(
    (part) =>
      !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(part) || /^(utils?|helpers?|common|misc|managers?)$/.test(part),
  )
  expect(wrong).toEqual([])
})

const LONGEST_LINE = 140

test('markup is laid out as a tree: no line of a page is longer than a screen', () => {
  const long = files
    .filter((file) => /^src\/http\/(pages|inspection)\//.test(file))
    .flatMap((file) =>
      textOf(file)
        .split('\n')
        .flatMap((line, at) => (line.length > LONGEST_LINE ? [`${file}:${at + 1}`] : [])),
    )
  expect(long).toEqual([])
})
