import { describe, expect, test } from 'vitest'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { compare } from '../forms/compare.ts'
import { HELD_OUT, LAYOUTS, type LayoutName, type MadeForm, makeForm } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8]

async function wordsOf({ pdf }: MadeForm): Promise<PageWords[]> {
  const reading = await readDocument(pdf)
  if (reading.outcome !== 'read') throw new Error(reading.outcome)
  return reading.pages.flatMap((page) => (page.state === 'read' ? [page.words] : []))
}

describe.each([...Object.keys(LAYOUTS), ...Object.keys(HELD_OUT)] as LayoutName[])(
  'text PDFs laid out as %s',
  (layout) => {
    test('every value that the form shows is proposed, right, and none that it does not show', async () => {
      const form = await makeForm(SEEDS.map((seed) => ({ layout, seed })))
      const proposals = proposePermits(await wordsOf(form), QUILLBACK)
      expect(proposals.map(({ pages }) => pages)).toEqual(form.papers.map(({ pages }) => pages))
      const wrong = form.papers.flatMap((paper, index) =>
        compare(paper, proposals[index])
          .filter(({ right }) => !right)
          .map(
            ({ pointer, expected, proposed }) =>
              `seed ${SEEDS[index]} ${pointer}: ${expected}, proposed ${proposed}`,
          ),
      )
      expect(wrong).toEqual([])
      form.papers.forEach((paper, index) => {
        const kinds = paper.truth.entry.components
          .filter((_, at) => [...paper.shown].some((pointer) => pointer.startsWith(`/components/${at}/`)))
          .map(({ kind }) => kind)
        expect([...proposals[index]!.entry.components.map(({ kind }) => kind)].sort()).toEqual(
          [...kinds].sort(),
        )
      })
    })

    test('what is proposed is a permit entry as a person would type it', async () => {
      const form = await makeForm([{ layout, seed: 11 }])
      const [proposal] = proposePermits(await wordsOf(form), QUILLBACK)
      expect(proposal!.missing.filter((pointer) => pointer !== '/approvedOn')).toEqual([])
      const entry = permitEntry.safeParse(proposal!.entry)
      expect(entry.error?.issues ?? []).toEqual([])
    })

    test('each value has a box on the page where its words stand', async () => {
      const form = await makeForm([{ layout, seed: 12 }])
      const pages = await wordsOf(form)
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
        expect(
          seen.includes(said.slice(0, 8)) || said.includes(seen.slice(0, 8)),
          `${words} in ${seen}`,
        ).toBe(true)
      }
    })
  },
)

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
