import { resolve } from 'node:path'
import { loadRuleBook, loadRuleBookWith } from '../files/rule-packs.ts'
import type { RuleBook } from '../rules/book.ts'
import { VERIFIED, weakest } from '../rules/citation.ts'
import { PARAMETER_NAMES } from '../rules/parameters.ts'
import { faultInWords } from '../rules/parse/fault.ts'
import { sourcesMarkdown } from '../rules/sources-table.ts'

/** Which parameters are held by how many packs, and how many of their entries have which status. */
function summary(book: RuleBook): string {
  const packs = [...book.packs.values()]
  const invented = packs.filter((pack) => pack.invented).flatMap((pack) => pack.parameters)
  const made = new Set<unknown>(invented.flatMap((it) => [...it.entries]))
  const rows = PARAMETER_NAMES.map((name) => {
    const parameters = packs.flatMap((pack) => pack.parameters.filter((it) => it.name === name))
    const entries = parameters.flatMap((it) => it.entries)
    const real = entries.filter((it) => !made.has(it))
    const counts = VERIFIED.map((status) => real.filter((it) => weakest(it.citations) === status).length)
    return [name, parameters.length, entries.length, ...counts, entries.length - real.length].map(String)
  })
  const head = ['parameter', 'packs', 'entries', ...VERIFIED, 'invented']
  const width = head.map((_, i) => Math.max(...[head, ...rows].map((row) => row[i]!.length)))
  const line = (row: readonly string[]): string =>
    row.map((cell, i) => (i === 0 ? cell.padEnd(width[i]!) : cell.padStart(width[i]!))).join('  ')
  const disputed = packs.flatMap((pack) =>
    pack.parameters.flatMap(({ name, entries }) =>
      entries.flatMap(({ contradictions }) =>
        contradictions.map(({ says }) => `${pack.pack}, ${name}: ${says}`),
      ),
    ),
  )
  return [
    `${packs.length} packs of ${book.places.size} places, no faults.`,
    '',
    ...[head, ...rows].map(line),
    '',
    'Each entry is counted by its weakest citation.',
    ...(disputed.length > 0
      ? ['', 'Sources that contradict each other (both are kept):', ...disputed.map((it) => `- ${it}`)]
      : []),
  ].join('\n')
}

const words = process.argv.slice(2)
const path = words.find((it) => !it.startsWith('--'))
const unknown = words.filter((it) => it.startsWith('--') && it !== '--sources')
if (unknown.length > 0) {
  console.error(`Unknown option ${unknown.join(', ')}. Use: npm run rules:check [-- path] [-- --sources]`)
  process.exit(1)
}
try {
  const book = await (path === undefined ? loadRuleBook() : loadRuleBookWith(resolve(path)))
  if (book.ok) console.log(words.includes('--sources') ? sourcesMarkdown(book.value) : summary(book.value))
  else {
    for (const fault of book.error) console.error(faultInWords(fault))
    console.error(`${book.error.length} ${book.error.length === 1 ? 'fault' : 'faults'}.`)
    process.exitCode = 1
  }
} catch (error) {
  if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
  console.error(`Nothing found at ${path}. Name a pack (place/topic.yaml) or a folder of packs.`)
  process.exitCode = 1
}
