import { expect, test } from 'vitest'
import { withoutPeople } from '../../src/reading/association/people.ts'
import { proposePermits } from '../../src/reading/propose.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { textPage } from '../forms/text-page.ts'
import { OWNERS } from '../forms/unseen/desk.ts'
import { FAMILIES, unseenPage } from '../forms/unseen/families.ts'

const pages = await Promise.all(
  FAMILIES.map(async (family) => {
    const { pdf, papers } = await unseenPage(family, 71)
    return { family, page: await associated(await textPage(pdf)), papers }
  }),
)
const namesOn = (text: string): string[] =>
  [...OWNERS, ...pages.flatMap(({ papers }) => papers.map(({ truth }) => truth.noise.installer))].filter(
    (name) => text.includes(name),
  )

test('names of owners and installers are left out of nearly all that is stored, words and links', () => {
  const before = pages.flatMap(({ page }) => namesOn(page.words.map(({ text }) => text).join(' ')))
  const kept = pages.map(({ page }) => withoutPeople(page))
  const after = kept.flatMap(({ words }) => namesOn(words.map(({ text }) => text).join(' ')))
  expect(before.length).toBeGreaterThan(15)
  expect(after.length).toBeLessThanOrEqual(0.05 * before.length)
  for (const { links } of kept)
    for (const { field, text } of links!.values)
      if (field === 'owner' || field === 'installer') expect(text).toBe('')
})

test('nothing that is proposed changes by it', () => {
  for (const { page } of pages)
    expect(proposePermits([withoutPeople(page)], QUILLBACK)).toEqual(proposePermits([page], QUILLBACK))
})

test('a page without such names, or without links, stays as it is', () => {
  const [{ page }] = pages as [(typeof pages)[number]]
  const { links: _, ...bare } = page
  expect(withoutPeople(bare)).toBe(bare)
})
