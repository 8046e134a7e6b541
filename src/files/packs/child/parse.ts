import { text } from 'node:stream/consumers'
import { type PackText, parsePacks } from '../../../rules/parse/parse-packs.ts'
import { say } from '../../../scan/child/say.ts'

/** More faults than anybody fixes before trying again. */
const MOST_FAULTS = 200

/** Reads packs as JSON from standard input; says each as it was understood, or what is wrong with them. */
const packs = JSON.parse(await text(process.stdin)) as readonly PackText[]
const book = parsePacks(packs)
if (book.ok) {
  for (const pack of book.value.packs.values()) say({ pack })
  say({ done: true })
} else say({ faults: book.error.slice(0, MOST_FAULTS) })
process.exit(0)
