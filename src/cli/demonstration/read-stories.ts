import { readdirSync, readFileSync } from 'node:fs'
import { faultInWords } from '../../rules/parse/fault.ts'
import { parseStory } from './parse-story.ts'
import type { Story } from './story.ts'

/** Every story of the county, by name. Throws with every fault of every file: the stories ship with the service. */
export function readStories(folder: URL = new URL('stories/', import.meta.url)): readonly Story[] {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
  const parsed = files.map((name) => parseStory(name, readFileSync(new URL(name, folder), 'utf8')))
  const faults = parsed.flatMap((result) => (result.ok ? [] : result.error))
  if (faults.length > 0)
    throw new Error(`The stories cannot be read:\n${faults.map(faultInWords).join('\n')}`)
  return parsed.flatMap((result) => (result.ok ? [result.value] : []))
}
