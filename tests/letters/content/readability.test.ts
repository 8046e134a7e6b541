import { expect, test } from 'vitest'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { ROOMS, statusLetter } from '../../../src/letters/content/status-letter.ts'
import { LANGUAGES } from '../../../src/words/language.ts'
import { play } from '../../corpus/play.ts'
import { englishGrade } from '../../support/readability/english.ts'
import { SPANISH_NORMAL, spanishEase } from '../../support/readability/spanish.ts'
import { book, frameOf } from '../samples.ts'

const files = readStories().flatMap(({ slug, parcels, asOf }) =>
  parcels.map((file) => ({ name: `${slug}, ${file.parcel.number}`, file, asOf })),
)

/** What a letter says in sentences; its labels and numbers, its address and its code are not read as such. */
const sentencesIn = (content: unknown): readonly string[] => {
  if (typeof content === 'string')
    return /[.?]$/.test(content) && content.split(' ').length > 3 ? [content] : []
  return typeof content === 'object' && content !== null ? Object.values(content).flatMap(sentencesIn) : []
}

test.each(files)(
  'the letter of $name is at grade 8 or below, and at least normal in Spanish',
  ({ file: story, asOf }) => {
    const { reconciliation, status } = play(story, asOf, book)
    const { asBuilt, ...answer } = reconciliation
    const file = { answer, permits: asBuilt.permits, on: asBuilt.on }
    const facts = { status, files: [{ system: null, file }] as const, standing: [] }
    for (const language of LANGUAGES) {
      const text = sentencesIn(statusLetter({ ...frameOf('status'), language }, facts, ROOMS[0])).join(' ')
      expect(text.length).toBeGreaterThan(500)
      if (language === 'en') expect(englishGrade(text)).toBeLessThanOrEqual(8)
      else expect(spanishEase(text)).toBeGreaterThanOrEqual(SPANISH_NORMAL)
    }
  },
)
