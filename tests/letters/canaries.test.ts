import { afterAll, describe, expect, test } from 'vitest'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import type { ParcelFile } from '../../src/cli/demonstration/story.ts'
import { openPress } from '../../src/letters/press/press.ts'
import { statusWords } from '../../src/words/agent/status.ts'
import { LANGUAGES } from '../../src/words/language.ts'
import { play } from '../corpus/play.ts'
import { type Canaries, canaries, FREE_TEXT, NAMES_ANOTHER } from '../support/canaries.ts'
import { openLetter } from './open-letter.ts'
import { book, frameOf, statusSheet } from './samples.ts'

/**
 * Every story told again with a word of its own in every field of free text. An agent and the holder of a letter read
 * none of them, and what the county answers is what it answered before: it goes by no name that somebody gave.
 */
function planted(file: ParcelFile, birds: Canaries): ParcelFile {
  return {
    ...file,
    permits: file.permits.map((it) => ({ ...it, record: birds.permit(it.record) })),
    findings: file.findings.map((it) => ({ ...it, record: birds.findings(it.record) })),
    decisions: file.decisions.map((it) => ({
      ...it,
      subject: birds.key(it.subject),
      reason: birds.fresh('decision.reason'),
      ...(it.corrects && {
        corrects: {
          ...it.corrects,
          permit: birds.same('permit.number', it.corrects.permit),
          ...(it.corrects.component && { component: birds.same('key', it.corrects.component) }),
        },
      }),
    })),
  }
}

const press = openPress()
afterAll(press.close)
const birds = canaries()
const files = readStories().flatMap(({ slug, parcels, asOf }) =>
  parcels.map((file) => ({ name: `${slug}, ${file.parcel.number}`, file: planted(file, birds), asOf })),
)

describe.each(files)('$name', ({ file, asOf }) => {
  const { reconciliation, status } = play(file, asOf, book)
  const { asBuilt, ...answer } = reconciliation
  const standing = answer.discrepancies.map((discrepancy) => ({
    id: discrepancy.key,
    discrepancy,
    decided: null,
  }))
  const facts = {
    status,
    files: [{ system: null, file: { answer, permits: asBuilt.permits, on: asBuilt.on } }] as const,
    standing,
  }

  test('is answered as under its own names', () => {
    expect(status.word).toBe(file.expects.status)
  })

  test.each(LANGUAGES)('says nothing that somebody else wrote, in %s', async (language) => {
    expect(birds.in(JSON.stringify(statusWords(status, language)))).toEqual([])
    const { pdf } = await press.print(statusSheet(facts, { ...frameOf('status'), language }))
    const { text, title, alternatives } = await openLetter(pdf)
    // A letter names the permits it rests on.
    const read = birds.in([...text, title, ...alternatives].join(' '))
    expect(read.filter((it) => it !== 'permit.number')).toEqual([])
  })
})

test('the stories have a word in every field of free text, and the file itself tells them', () => {
  expect(birds.planted()).toEqual(
    expect.arrayContaining(FREE_TEXT.filter((it) => !NAMES_ANOTHER.includes(it))),
  )
  expect(birds.in(JSON.stringify(files.map(({ file }) => file))).length).toBeGreaterThan(
    FREE_TEXT.length - NAMES_ANOTHER.length,
  )
})
