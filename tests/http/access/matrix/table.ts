import { readFileSync } from 'node:fs'
import type { Role } from '../../../../src/store/database/actor.ts'

/**
 * What a role may do with a route: `all` that is in its county, `own` of its organization (another's is not there), `self`
 * of the account alone, `own list` (it answers, with the organization's own), `looks after` its organization, or nothing.
 */
export const WORDS = ['all', 'own', 'self', 'own list', 'looks after', 'no'] as const
export type Word = (typeof WORDS)[number]
export type Row = { readonly anyone: boolean; readonly may: { readonly [R in Role]: Word } }

const page = readFileSync(new URL('../../../../docs/access.md', import.meta.url), 'utf8')
const LINE = /^\| `((?:GET|POST|PUT|DELETE|PATCH) \/[^`]*)` \| ([^|]+) \| ([^|]+) \| ([^|]+) \|$/gm

/** The table of routes on the page, by `METHOD /path`. */
export const ROWS: ReadonlyMap<string, Row> = new Map(
  [...page.matchAll(LINE)].map(([, route, reviewer, firm, agent]) => {
    const words = [reviewer, firm, agent].map((text) => text!.trim())
    const anyone = words.every((word) => word === 'anyone')
    const [forReviewer, forFirm, forAgent] = words.map((word) => (anyone ? 'all' : wordOf(route!, word)))
    return [route!, { anyone, may: { reviewer: forReviewer!, firm: forFirm!, agent: forAgent! } }]
  }),
)

function wordOf(route: string, text: string): Word {
  const found = WORDS.find((word) => word === (text === '–' ? 'no' : text))
  if (!found)
    throw new Error(`docs/access.md, ${route}: "${text}" is none of: ${WORDS.join(', ')}, –, anyone`)
  return found
}

/** A route's address as the page writes it: without the patterns of its parameters. */
export const written = (url: string): string => url.replaceAll(/\([^)]*\)/g, '')
