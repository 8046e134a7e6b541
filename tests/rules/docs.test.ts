import { readFile } from 'node:fs/promises'
import { describe, expect, test } from 'vitest'
import { PACKS_FOLDER, readPackTexts } from '../../src/files/rule-packs.ts'
import { PARAMETER_NAMES, PARAMETERS, type ParameterName } from '../../src/rules/parameters.ts'
import { faultInWords } from '../../src/rules/parse/fault.ts'
import { parsePack } from '../../src/rules/parse/parse-pack.ts'
import { parsePacks } from '../../src/rules/parse/parse-packs.ts'
import { sourcesMarkdown } from '../../src/rules/sources-table.ts'
import { SHIPPED } from './shipped-book.ts'

const page = (name: string) => readFile(new URL(`../../docs/${name}`, import.meta.url), 'utf8')
const rules = await page('rules.md')
const blocks = [...rules.matchAll(/```yaml (\S+)(?: (\S+))?\n([\s\S]*?)```/g)].map(([, what, id, text]) => ({
  what: what!,
  id: id ?? null,
  text: text!,
}))
const indent = (text: string, by: number) => text.replaceAll(/^(?=.)/gm, ' '.repeat(by))

describe('docs/rules.md', () => {
  test('names every parameter there is, and no other', () => {
    const named = new Set(
      [...rules.matchAll(/`([a-z]+[.-][a-z][a-z.-]*|setbacks|expectations)`/g)].map((it) => it[1]!),
    )
    expect(PARAMETER_NAMES.filter((name) => !named.has(name))).toEqual([])
    expect(
      [...named].filter(
        (name) =>
          /^(tank|inlet|outlet|absorption|solids|position|transfer|level|design)\./.test(name) &&
          !(name in PARAMETERS),
      ),
    ).toEqual([])
  })

  test('its pack is sound beside the shipped ones', async () => {
    const example = blocks.find(({ what }) => what === 'pack')!
    const parsed = parsePacks([
      ...(await readPackTexts(PACKS_FOLDER)),
      { path: `${example.id}.yaml`, text: example.text },
    ])
    expect(parsed.ok ? [] : parsed.error.map(faultInWords)).toEqual([])
  })

  const values = blocks.filter(({ what }) => what !== 'pack' && what !== 'contradictions')
  test.each(values)('its example of $what is sound', ({ what, text }) => {
    const gathered = PARAMETERS[what as ParameterName].layering === 'gathered'
    const pack = [
      'pack: alder/example',
      'jurisdiction: { kind: county, name: Alder County }',
      'title: Example',
      'parameters:',
      `  - name: ${what}`,
      '    governed-by: inspected',
      '    entries:',
      '      - from: null',
      '        until: null',
      ...(gathered ? [] : ['        citations: [{ verified: common-practice }]']),
      '        value:',
      indent(text, 10),
    ].join('\n')
    const parsed = parsePack('alder/example.yaml', pack)
    expect(parsed.ok ? [] : parsed.error.map(faultInWords)).toEqual([])
  })

  test('its example of a contradiction is sound', () => {
    const { text } = blocks.find(({ what }) => what === 'contradictions')!
    const pack = `pack: alder/example
jurisdiction: { kind: county, name: Alder County }
title: Example
parameters:
  - name: level.tolerance-in
    governed-by: inspected
    entries:
      - from: null
        until: null
        value: { amount: 1, unit: in }
        citations: [{ verified: common-practice }]
${indent(text, 8)}`
    const parsed = parsePack('alder/example.yaml', pack)
    expect(parsed.ok ? [] : parsed.error.map(faultInWords)).toEqual([])
  })
})

test('docs/sources.md lists the sources of the packs as they are (npm run rules:check -- --sources)', async () => {
  expect((await page('sources.md')).trimEnd().endsWith(sourcesMarkdown(SHIPPED))).toBe(true)
})
