import { describe, expect, test } from 'vitest'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { compare } from '../forms/compare.ts'
import { FIRST_CONTACT, HELD_OUT, LAYOUTS, type LayoutName, type MadeForm, makeForm } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8]

async function wordsOf({ pdf }: MadeForm): Promise<PageWords[]> {
  const reading = await readDocument(pdf)
  if (reading.outcome !== 'read') throw new Error(reading.outcome)
  return reading.pages.flatMap((page) => (page.state === 'read' ? [page.words] : []))
}

/** Its table is not read as one yet: see docs/reading.md. */
const IN_PART: LayoutName = 'abstract-1997'
const WHOLE = ([LAYOUTS, HELD_OUT, FIRST_CONTACT].flatMap(Object.keys) as LayoutName[]).filter(
  (name) => name !== IN_PART,
)

test('what is not read whole is right as far as it is', async () => {
  const form = await makeForm(SEEDS.map((seed) => ({ layout: IN_PART, seed })))
  const proposals = proposePermits(await wordsOf(form), QUILLBACK)
  const fields = form.papers.flatMap((paper, index) => compare(paper, proposals[index]))
  const proposed = fields.filter((field) => field.proposed !== null)
  expect(proposed.filter(({ right }) => !right)).toEqual([])
  expect(proposed.length).toBeGreaterThan(0.75 * fields.length)
})

describe.each(WHOLE)('text PDFs laid out as %s', (layout) => {
  // Read once for all: a start of the reader costs more than the pages.
  const made = makeForm([...SEEDS, 11, 12].map((seed) => ({ layout, seed })))
  const read = made.then(wordsOf)

  test('every value that the form shows is proposed, right, and none that it does not show', async () => {
    const papers = (await made).papers.slice(0, SEEDS.length)
    const proposals = proposePermits((await read).slice(0, SEEDS.length), QUILLBACK)
    expect(proposals.map(({ pages }) => pages)).toEqual(papers.map(({ pages }) => pages))
    const wrong = papers.flatMap((paper, index) =>
      compare(paper, proposals[index])
        .filter(({ right }) => !right)
        .map(
          ({ pointer, expected, proposed }) =>
            `seed ${SEEDS[index]} ${pointer}: ${expected}, proposed ${proposed}`,
        ),
    )
    expect(wrong).toEqual([])
    papers.forEach((paper, index) => {
      const kinds = paper.truth.entry.components
        .filter((_, at) => [...paper.shown].some((pointer) => pointer.startsWith(`/components/${at}/`)))
        .map(({ kind }) => kind)
      expect([...proposals[index]!.entry.components.map(({ kind }) => kind)].sort()).toEqual(
        [...kinds].sort(),
      )
    })
  })

  test('what is proposed is a permit entry as a person would type it', async () => {
    const [proposal] = proposePermits((await read).slice(-2, -1), QUILLBACK)
    const { shown } = (await made).papers.at(-2)!
    expect(proposal!.missing.filter((pointer) => shown.has(pointer))).toEqual([])
    // Not every paper says what was done; a person fills that in.
    const entry = permitEntry.safeParse({ kind: 'new', ...proposal!.entry })
    expect(entry.error?.issues ?? []).toEqual([])
  })

  test('each value has a box on the page where its words stand', async () => {
    const pages = (await read).slice(-1)
    for (const { box, words } of proposePermits(pages, QUILLBACK)[0]!.fields) {
      const within = pages[0]!.words.filter(
        (word) =>
          word.box.x < box.x + box.w &&
          word.box.x + word.box.w > box.x &&
          word.box.y < box.y + box.h &&
          word.box.y + word.box.h > box.y,
      )
      const seen = within
        .map(({ text }) => text)
        .join(' ')
        .replace(/[^A-Za-z0-9]/g, '')
      const said = words.replace(/[^A-Za-z0-9]/g, '')
      expect(seen.includes(said.slice(0, 8)) || said.includes(seen.slice(0, 8)), `${words} in ${seen}`).toBe(
        true,
      )
    }
  })
})

test('a document with two permits on two forms is split where the second begins', async () => {
  const form = await makeForm([
    { layout: 'form-1978', seed: 21 },
    { layout: 'printout-1999', seed: 22 },
  ])
  const proposals = proposePermits(await wordsOf(form), QUILLBACK)
  expect(proposals.map(({ pages }) => pages)).toEqual([[1], [2]])
  expect(proposals.map(({ entry }) => entry.number)).toEqual(
    form.papers.map(({ truth }) => truth.entry.number),
  )
})

test('a second page without a number of its own goes on with the permit before it', async () => {
  const form = await makeForm([{ layout: 'form-1986', seed: 31 }])
  const [page] = await wordsOf(form)
  const bare: PageWords = {
    ...page!,
    page: 2,
    words: [
      { text: 'Remarks:', box: { x: 0.1, y: 0.1, w: 0.1, h: 0.012 }, confidence: 1 },
      { text: 'Backfilled', box: { x: 0.21, y: 0.1, w: 0.1, h: 0.012 }, confidence: 1 },
    ],
  }
  const proposals = proposePermits([page!, bare], QUILLBACK)
  expect(proposals.map(({ pages }) => pages)).toEqual([[1, 2]])
  expect(proposals[0]!.entry.remarks).toBe('Backfilled')
})

test('no words, no permit facts; no pages, no permits', () => {
  expect(proposePermits([], QUILLBACK)).toEqual([])
  const blank: PageWords = {
    page: 1,
    widthPt: 612,
    heightPt: 792,
    turn: 0,
    levelDegrees: 0,
    readBy: 'text-layer',
    words: [],
    secondWords: null,
  }
  const [proposal] = proposePermits([blank], QUILLBACK)
  expect(proposal!.fields).toEqual([])
  expect(proposal!.missing).toEqual(['/number', '/kind', '/approvedOn', '/parcelNumber', '/components'])
})
