import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const PAGES = new URL('../../../src/http/pages/', import.meta.url)
const files = readdirSync(PAGES, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'))

/** What asks, sends or keeps: the rest of the pages only turns what was read into what is shown. */
const ASKS = /(^|\/)(route|answer|show-file|page-reply|pages|public-files|assets-route|gzipped)\.ts$/
const pure = files.filter((name) => !ASKS.test(name) && !name.startsWith('inspection/'))

describe.each(pure)('%s', (name) => {
  const text = readFileSync(new URL(name, PAGES), 'utf8')

  test('asks nobody: no system, no database, no server, no clock, no chance', () => {
    const imports = [...text.matchAll(/^import (?!type )[^']*from '([^']+)'/gm)].map(([, from]) => from!)
    expect(imports.filter((from) => /^node:|fastify|kysely|\bpg\b/.test(from))).toEqual([])
    expect(text).not.toMatch(/new Date\(\)|Date\.now|Math\.random|process\./)
  })

  test('has nothing inline that the policy would refuse, and opens nothing in another window', () => {
    expect(text).not.toMatch(
      / style=|<style|<script(?! type="module" src=)| on[a-z]+="|target="_blank|javascript:/,
    )
  })
})
