import { describe, expect, test } from 'vitest'
import { learnForm } from '../../../src/reading/family/learn.ts'
import { isSameForm } from '../../../src/reading/family/same-form.ts'
import { taughtForm } from '../../../src/reading/family/taught-form.ts'
import type { PageWords } from '../../../src/reading/page-words.ts'
import { proposePermits } from '../../../src/reading/propose.ts'
import { associated } from '../../../src/scan/child/association/associate.ts'
import { QUILLBACK } from '../../forms/quillback.ts'
import { textPage } from '../../forms/text-page.ts'
import { lessonsOf } from '../../forms/unseen/confirmed.ts'
import { type FamilyName, unseenPage } from '../../forms/unseen/families.ts'
import { heldAgainst, isMarked } from '../../forms/unseen/held.ts'

const read = async (family: FamilyName, seed: number) => {
  const { pdf, papers } = await unseenPage(family, seed)
  const page = await associated(await textPage(pdf))
  return { papers, page }
}
const context = { format: QUILLBACK, misread: false }

describe.each(['ledger-1961', 'film-1966'] as const)('three confirmed leaves of %s', async (family) => {
  const leaves = await Promise.all([61, 62, 63].map((seed) => read(family, seed)))
  const lessons = leaves.flatMap(({ papers, page }) =>
    lessonsOf(papers, page, proposePermits([page], QUILLBACK)),
  )
  const form = learnForm(lessons, context)!
  const next = await Promise.all([64, 65].map((seed) => read(family, seed)))
  const told = (page: PageWords, known: boolean) =>
    proposePermits([page], QUILLBACK, known ? [{ name: family, form }] : [])

  test('teach where values lie about the number of each permit, as data', () => {
    const [sheet] = form.sheets
    expect(sheet!.fields).toEqual([])
    expect(sheet!.rows!.columns).toHaveLength(family === 'film-1966' ? 2 : 1)
    expect(sheet!.rows!.fields.length).toBeGreaterThan(5)
    expect(taughtForm.parse(JSON.parse(JSON.stringify(form)))).toEqual(form)
    expect(JSON.stringify(form)).not.toMatch(/\d\d-\d{4}-\d{4}/)
  })

  test('lose no value that was right on the next, and mark none wrongly', () => {
    const [before, after] = [false, true].map((known) =>
      next.map(({ papers, page }) => heldAgainst(papers, told(page, known))),
    )
    const rights = (all: typeof before) => all!.flatMap(({ held }) => held.filter(({ right }) => right))
    const names = (all: typeof before) => rights(all).map(({ pointer, expected }) => `${pointer} ${expected}`)
    expect(names(before).filter((name) => !names(after).includes(name))).toEqual([])
    // Units that go without saying in a ledger are known then; where a card's lines move, a place makes for a second look.
    const more = family === 'ledger-1961' ? 1.2 : 0.95
    expect(rights(after).filter(isMarked).length).toBeGreaterThan(
      more * rights(before).filter(isMarked).length,
    )
    const wrong = after!.flatMap(({ held }) => held.filter((one) => isMarked(one) && !one.right))
    expect(wrong).toEqual([])
  })

  test('find each permit where the links have put them all together', () => {
    const [{ papers, page }] = next as [(typeof next)[number]]
    const values = page.links!.values.map((value) => ({ ...value, permit: 0 }))
    const muddled = { ...page, links: { ...page.links!, values } }
    expect(heldAgainst(papers, told(muddled, false)).found).toBeLessThan(papers.length)
    expect(heldAgainst(papers, told(muddled, true)).found).toBe(papers.length)
  })

  test('are known as one form, and not as the other', async () => {
    expect(isSameForm(leaves[0]!.page, leaves[1]!.page)).toBe(true)
    const other = await read(family === 'film-1966' ? 'ledger-1961' : 'docket-1954', 61)
    expect(isSameForm(leaves[0]!.page, other.page)).toBe(false)
    expect(told(other.page, true).every(({ family: known }) => known === null)).toBe(true)
  })

  test('two leaves teach nothing, however many permits they have', () => {
    expect(
      learnForm(
        lessons.filter(({ leaf }) => leaf !== lessons[0]!.leaf),
        context,
      ),
    ).toBeNull()
  })
})
