import { describe, expect, test } from 'vitest'
import { permitEntry } from '../../src/reading/entry/permit.ts'
import type { PageWords } from '../../src/reading/page-words.ts'
import type { ProposedPermit } from '../../src/reading/proposal.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { FIRST_CONTACT, HELD_OUT, LAYOUTS, type LayoutName, makeForm } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { FAMILIES, unseenPage } from '../forms/unseen/families.ts'
import { heldAgainst, isMarked } from '../forms/unseen/held.ts'
import { linkedAll } from './associated-page.ts'

const SEEDS = [1, 2, 3]
const NAMES = [LAYOUTS, HELD_OUT, FIRST_CONTACT].flatMap(Object.keys) as LayoutName[]
const ASKED = NAMES.flatMap((layout) => SEEDS.map((seed) => ({ layout, seed })))

async function wordsOf({ pdf }: { readonly pdf: Buffer }): Promise<PageWords[]> {
  const reading = await readDocument(pdf)
  if (reading.outcome !== 'read') throw new Error(reading.outcome)
  return reading.pages.flatMap((page) => (page.state === 'read' ? [page.words] : []))
}

/** Sixteen layouts that no training saw, read once for all: a start of the reader costs more than the pages. */
const made = makeForm(ASKED)
const read = made.then(wordsOf)
const proposedOf = async (at: number): Promise<ProposedPermit> =>
  proposePermits([(await read)[at]!], QUILLBACK)[0]!

describe('text PDFs of sixteen layouts', () => {
  test('nearly every value is proposed and right, and next to none that a form does not show', async () => {
    const { papers } = await made
    const held = (await Promise.all(ASKED.map((_, at) => proposedOf(at)))).flatMap(
      (proposal, at) => heldAgainst([papers[at]!], [proposal]).held,
    )
    const expected = held.filter((one) => one.expected !== null)
    const proposed = held.filter(({ field }) => field !== null)
    const marked = held.filter(isMarked)
    // docs/reading.md has the shares; these are floors that chance does not reach.
    expect(expected.filter(({ field }) => field).length).toBeGreaterThan(0.98 * expected.length)
    expect(proposed.filter(({ right }) => right).length).toBeGreaterThan(0.98 * proposed.length)
    expect(marked.length).toBeGreaterThan(0.6 * expected.length)
    expect(marked.filter(({ right }) => !right).length).toBeLessThanOrEqual(0.005 * marked.length)
  }, 120_000)

  test('what is proposed is a permit entry as a person would type it', async () => {
    for (const at of ASKED.keys()) {
      const { entry } = await proposedOf(at)
      // Not every paper says what was done or what it is numbered; a person fills that in. Half a tie is no tie yet.
      const components = entry.components.map(({ tie, ...own }) => (tie?.a && tie.b ? { ...own, tie } : own))
      const parsed = permitEntry.safeParse({ kind: 'new', number: '1', ...entry, components })
      expect(parsed.error?.issues ?? [], `${ASKED[at]!.layout} ${ASKED[at]!.seed}`).toEqual([])
    }
  })

  test('each value has a box on the page where its words stand, and most the words that say what it is', async () => {
    for (const at of ASKED.keys()) {
      const { words: all } = (await read)[at]!
      for (const { box, words } of (await proposedOf(at)).fields) {
        const within = all.filter(
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
    }
    const values = (await Promise.all(ASKED.map((_, at) => proposedOf(at)))).flatMap(({ fields }) => fields)
    const told = values.filter(({ pointer }) => !/(?:tag|kind|action)$/.test(pointer))
    expect(told.filter(({ why }) => why !== null).length).toBeGreaterThan(0.7 * told.length)
  })
})

describe('layouts drawn to be met for the first time', () => {
  test('are read, and the permits of a page told apart', async () => {
    const pages = await Promise.all(FAMILIES.map((name) => unseenPage(name, 41)))
    const all = await Promise.all(
      pages.map(async ({ pdf, papers }) =>
        heldAgainst(papers, proposePermits(await wordsOf({ pdf }), QUILLBACK)),
      ),
    )
    const held = all.flatMap((page) => page.held)
    const permits = pages.reduce((sum, { papers }) => sum + papers.length, 0)
    expect(all.reduce((sum, { found }) => sum + found, 0)).toBe(permits)
    expect(held.filter(({ right }) => right).length).toBeGreaterThan(0.95 * held.length)
  }, 120_000)
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
  const proposals = proposePermits(await linkedAll([page!, bare]), QUILLBACK)
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
