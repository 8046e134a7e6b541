import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import type { z } from 'zod'
import { readSettings, SETTINGS } from '../../src/config.ts'
import { filesUnder, textOf } from './source-files.ts'

const page = readFileSync(new URL('../../docs/settings.md', import.meta.url), 'utf8')
/** Rows of the table: name, default, text. */
const rows = [...page.matchAll(/^\| `([A-Z_]+)` \| (.*?) \| (.+) \|$/gm)].map(
  ([, name, standard, about]) => ({
    name: name!,
    standard: standard!.replaceAll('`', ''),
    about: about!,
  }),
)

const defaultOf = (name: string): string => {
  const definition = (SETTINGS as Record<string, z.ZodType>)[name]!.def as { defaultValue?: unknown }
  return definition.defaultValue === undefined ? 'none' : String(definition.defaultValue)
}

test('every setting has its row, in the same order, and every row is a setting', () => {
  expect(rows.map(({ name }) => name)).toEqual(Object.keys(SETTINGS))
})

test('every row tells the default that the program has', () => {
  expect(rows.map(({ name, standard }) => [name, standard])).toEqual(
    Object.keys(SETTINGS).map((name) => [name, defaultOf(name)]),
  )
})

test('the environment is read in one place', () => {
  const readers = filesUnder('src').filter((file) => /process\.env\b(?!\.PATH\b)/.test(textOf(file)))
  expect(readers).toEqual(['src/config.ts'])
})

test('docker-compose.yml gives settings that exist, and values that they take', () => {
  const compose = parse(readFileSync(new URL('../../docker-compose.yml', import.meta.url), 'utf8')) as {
    services: { service: { environment: Record<string, string> } }
  }
  const given = Object.entries(compose.services.service.environment).map(([name, value]) => [
    name,
    // As the composer reads it when nothing is set: ${NAME:-standard}.
    value.replaceAll(/\$\{\w+:-([^}]*)\}/g, '$1'),
  ])
  expect(given.map(([name]) => name).filter((name) => !Object.hasOwn(SETTINGS, name!))).toEqual([])
  expect(readSettings(Object.fromEntries(given))).toMatchObject({ ok: true })
})
